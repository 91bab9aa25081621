import type { JSX } from 'react'
import type { Line, Stanchion } from '../../plan/types'
import { formatQuantity } from '../../plan/units'
import { change } from '../../state/change'
import { girderOf } from '../../state/edits/lookup'
import { loopsBeside } from '../../state/edits/stanchion-edits'
import { useApp } from '../../state/store'
import { typeStation } from '../../state/typed/put'
import { PartField } from '../fields/PartField'
import { QuantityField } from '../fields/QuantityField'
import { CommandButtons } from './CommandButtons'
import css from './inspector.module.css'
import { put } from './put'

export function StanchionFields({ line, stanchion }: { line: Line; stanchion: Stanchion }): JSX.Element {
  const { id } = stanchion
  const set = (recipe: (s: Stanchion) => void): string | null =>
    change('stanchion', id, `change ${id}`, (f) => recipe(f.stanchion))
  const girder = useApp((s) => girderOf(s.plan, line))
  const half = (girder?.section.topWidth ?? 10) / 2
  return (
    <>
      <QuantityField label="Station" unit="m" value={stanchion.station} onTake={(v) => typeStation(id, v)} />
      <LoopWords id={id} />
      <QuantityField
        label="Left of the middle"
        unit="m"
        value={stanchion.offset}
        least={-half}
        most={half}
        onTake={(v) => set((s) => put(s, 'offset', v))}
      />
      <PartField
        label="Stanchion"
        kind="stanchion"
        value={stanchion.part}
        onTake={(v) => void set((s) => put(s, 'part', v ?? s.part))}
      />
      <PartField
        label="Bracket"
        kind="bracket"
        value={stanchion.bracket}
        onTake={(v) => void set((s) => put(s, 'bracket', v ?? s.bracket))}
      />
      <QuantityField
        label="Plate under bolts"
        unit="m"
        value={stanchion.plate ?? 0}
        least={0}
        most={0.2}
        onTake={(v) => set((s) => put(s, 'plate', v))}
      />
      <Figures id={id} />
      <CommandButtons ids={['edit.nudgeBack', 'edit.nudgeOn', 'rig.addTieBack', 'edit.delete']} />
    </>
  )
}

function LoopWords({ id }: { id: string }): JSX.Element {
  const plan = useApp((s) => s.plan)
  const loops = loopsBeside(plan, id)
  const words = loops ? `between loops ${loops.before} and ${loops.after}` : 'not between two loops'
  return <p className={css.quiet}>{words}</p>
}

function Figures({ id }: { id: string }): JSX.Element | null {
  const found = useApp((s) => s.study.results?.lines.flatMap((l) => l.stanchions).find((x) => x.id === id))
  const units = useApp((s) => s.units)
  if (!found) return null
  const figures: [string, number | null, string][] = [
    ['Head pull along', found.head.along, 'N'],
    ['Down', found.head.down, 'N'],
    ['Shaft', found.shaftForce, 'N'],
    ['Base moment', found.baseMoment, 'N m'],
    ['Loops on the bracket', found.engagedLoops, 'count'],
    ...(found.tieBackAngle === null
      ? []
      : [['Steeper leg', found.tieBackAngle, 'deg'] as [string, number, string]]),
  ]
  return (
    <dl className={css.figures}>
      {figures.map(([label, value, unit]) => (
        <div key={label} style={{ display: 'contents' }}>
          <dt>{label}</dt>
          <dd>{formatQuantity(value, unit, units)}</dd>
        </div>
      ))}
    </dl>
  )
}
