/** The search for the fewest stanchions: what to choose from, how it goes, what passes and what is proven. */
import { Checkbox, NativeSelect } from '@mantine/core'
import { type JSX, useState } from 'react'
import type { Line, Part } from '../../plan/types'
import { formatQuantity } from '../../plan/units'
import { runFind, useFind } from '../../state/find/find-client'
import { useApp } from '../../state/store'
import type { Aim, FindTask } from '../../study/find/types'
import { QuantityField } from '../fields/QuantityField'
import { Alternatives } from './Alternatives'
import css from './find.module.css'
import { Working } from './Working'

const ORDERS: { value: string; label: string; aims: Aim[] }[] = [
  {
    value: 'clearance',
    label: 'parts, then clearance, then tension',
    aims: ['parts', 'clearance', 'tension'],
  },
  { value: 'tension', label: 'parts, then tension, then clearance', aims: ['parts', 'tension', 'clearance'] },
  { value: 'room', label: 'clearance, then tension, then parts', aims: ['clearance', 'tension', 'parts'] },
]

/** Steps of pretension that are offered beside what the line has, as shares of it. */
const STEPS = [0.75, 1.25]

export function FindPage({ line }: { line: Line }): JSX.Element {
  const plan = useApp((s) => s.plan)
  const parts = plan.parts
  const crew = plan.workers.filter((w) => w.line === line.id)
  const [from, setFrom] = useState<number | null>(null)
  const [to, setTo] = useState<number | null>(null)
  const [absorbers, setAbsorbers] = useState<(string | null)[]>([line.absorber])
  const [connectors, setConnectors] = useState<string[]>([])
  const [pretensions, setPretensions] = useState<number[]>([line.pretension])
  const [order, setOrder] = useState(ORDERS[0]!.value)
  const first = line.stanchions[0]?.station ?? 0
  const last = line.stanchions.at(-1)?.station ?? 0
  const task: FindTask = {
    plan,
    line: line.id,
    absorbers,
    connectors,
    pretensions,
    aims: ORDERS.find((o) => o.value === order)?.aims ?? ORDERS[0]!.aims,
    ...(from === null ? {} : { from }),
    ...(to === null ? {} : { to }),
  }
  const spare = absorbers.length === 0 || pretensions.length === 0
  const take = (set: (v: number) => void) => (v: number) => {
    set(v)
    return null
  }
  return (
    <div className={css.page}>
      <div className={css.row}>
        <QuantityField label="Cover from" value={from ?? first} unit="m" least={0} onTake={take(setFrom)} />
        <QuantityField label="to" value={to ?? last} unit="m" least={0} onTake={take(setTo)} />
        <NativeSelect
          label="With as few stanchions, least"
          value={order}
          onChange={(e) => setOrder(e.currentTarget.value)}
          data={ORDERS.map(({ value, label }) => ({ value, label }))}
        />
      </div>
      <div className={css.row}>
        <Choose
          legend="Line absorbers to choose from"
          options={[
            ...ofKind(parts, 'line-absorber').map((p) => ({ value: p.id as string | null, label: p.name })),
            { value: null, label: 'none' },
          ]}
          chosen={absorbers}
          onChange={setAbsorbers}
        />
        <Choose
          legend="Connectors for the whole crew (none ticked: as they are)"
          options={ofKind(parts, 'connector').map((p) => ({ value: p.id, label: p.name }))}
          chosen={connectors}
          onChange={setConnectors}
        />
        <Choose
          legend="Pretensions"
          options={[line.pretension, ...STEPS.map((s) => line.pretension * s)].map((value) => ({
            value,
            label: formatQuantity(value, 'N', plan.units),
          }))}
          chosen={pretensions}
          onChange={setPretensions}
        />
      </div>
      {crew.length === 0 ? (
        <p className={css.quiet}>Nobody is on this line: add a worker first, or no fall can be computed.</p>
      ) : null}
      <Working
        kind="find"
        start="Find the layout"
        disabled={spare || crew.length === 0}
        onStart={() => void runFind(task)}
      />
      <Found line={line} />
    </div>
  )
}

const ofKind = (parts: Part[], kind: Part['kind']): Part[] => parts.filter((p) => p.kind === kind)

function Choose<T extends string | number | null>(props: {
  legend: string
  options: { value: T; label: string }[]
  chosen: T[]
  onChange: (chosen: T[]) => void
}): JSX.Element {
  return (
    <fieldset className={css.group}>
      <legend>{props.legend}</legend>
      {props.options.map(({ value, label }) => (
        <Checkbox
          key={String(value)}
          label={label}
          checked={props.chosen.includes(value)}
          onChange={(e) =>
            props.onChange(
              e.currentTarget.checked ? [...props.chosen, value] : props.chosen.filter((v) => v !== value),
            )
          }
        />
      ))}
    </fieldset>
  )
}

function Found({ line }: { line: Line }): JSX.Element | null {
  const find = useFind((s) => (s.find?.line === line.id ? s.find : null))
  const running = useFind((s) => s.running === 'find')
  if (!find) return null
  return (
    <Alternatives
      line={line.id}
      plan={find.plan}
      result={find.result}
      progress={find.progress}
      running={running}
    />
  )
}
