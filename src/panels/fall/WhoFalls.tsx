/** Who falls and from where. A click on the line chooses the place for the one in hand. */
import { Button } from '@mantine/core'
import { Plus, Trash2 } from 'lucide-react'
import type { JSX } from 'react'
import type { Worker } from '../../plan/types'
import {
  addDrop,
  changeDrop,
  compute,
  crewOf,
  reachOf,
  removeDrop,
  setOrder,
} from '../../state/fall/drop-actions'
import { fallStore, useFall } from '../../state/fall/fall-store'
import { useApp } from '../../state/store'
import type { Drop } from '../../study/drop'
import { ChoiceField } from '../fields/ChoiceField'
import { QuantityField } from '../fields/QuantityField'
import css from './fall.module.css'

const orders = [
  { value: 'together', label: 'together, or with delays' },
  { value: 'in-turn', label: 'in turn, when the last one hangs still' },
]

export function WhoFalls(): JSX.Element {
  const plan = useApp((s) => s.plan)
  const line = useFall((s) => s.line)
  const drops = useFall((s) => s.drops)
  const order = useFall((s) => s.order)
  const crew = crewOf(plan, line)
  if (crew.length === 0)
    return <p>Nobody is hooked to this line. Add a worker to it in Rig, then come back.</p>
  return (
    <>
      <p className={css.quiet}>
        Click on the rope or on the tape where somebody falls. With Shift another one falls too.
      </p>
      {drops.map((drop, i) => (
        <DropFields key={i} drop={drop} index={i} crew={crew} delays={order === 'together' && i > 0} />
      ))}
      {drops.length > 1 ? (
        <ChoiceField
          label="They fall"
          value={order}
          choices={orders}
          onTake={(v) => setOrder(v === 'in-turn' ? 'in-turn' : 'together')}
        />
      ) : null}
      <div className={css.buttons}>
        <Button variant="filled" disabled={drops.length === 0} onClick={() => void compute()}>
          Drop
        </Button>
        <Button
          variant="default"
          disabled={drops.length >= 6}
          leftSection={<Plus size={14} aria-hidden />}
          onClick={() => addDrop()}
        >
          Another worker
        </Button>
      </div>
    </>
  )
}

function DropFields(props: { drop: Drop; index: number; crew: Worker[]; delays: boolean }): JSX.Element {
  const { drop, index, crew } = props
  const active = useFall((s) => s.active === index)
  const several = useFall((s) => s.drops.length > 1)
  const reach = useReach()
  return (
    <div className={css.drop} data-active={several && active}>
      {several ? <DropHead index={index} active={active} /> : null}
      <ChoiceField
        label="Worker"
        value={drop.worker}
        choices={crew.map((w) => ({ value: w.id, label: w.name || w.id }))}
        onTake={(worker) => changeDrop(index, { worker })}
      />
      <QuantityField
        label="Station on the girder"
        unit="m"
        value={drop.station}
        least={reach.from}
        most={reach.to}
        onTake={(station) => changeDrop(index, { station }) ?? null}
      />
      {props.delays ? (
        <QuantityField
          label="Later than the first"
          unit="s"
          value={drop.delay}
          least={0}
          most={5}
          onTake={(delay) => changeDrop(index, { delay }) ?? null}
        />
      ) : null}
    </div>
  )
}

function DropHead({ index, active }: { index: number; active: boolean }): JSX.Element {
  return (
    <div className={css.dropHead}>
      <button
        type="button"
        className={css.pick}
        aria-pressed={active}
        onClick={() => fallStore.setState({ active: index })}
      >
        {active ? `Fall ${index + 1}, in hand` : `Fall ${index + 1}`}
      </button>
      <button
        type="button"
        className={css.pick}
        aria-label={`Take fall ${index + 1} out`}
        onClick={() => removeDrop(index)}
      >
        <Trash2 size={14} aria-hidden />
      </button>
    </div>
  )
}

const nowhere = { from: 0, to: 0 }

function useReach(): { from: number; to: number } {
  const id = useFall((s) => s.line)
  const line = useApp((s) => s.plan.lines.find((l) => l.id === id))
  return line ? reachOf(line) : nowhere
}
