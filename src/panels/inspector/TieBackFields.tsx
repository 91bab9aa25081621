import type { JSX } from 'react'
import { tieBackLegs } from '../../geometry/tie-back'
import { findPart } from '../../plan/find'
import type { Line, TieBack } from '../../plan/types'
import { formatQuantity } from '../../plan/units'
import { change } from '../../state/change'
import { girderOf } from '../../state/edits/lookup'
import { type Foot, footLoop } from '../../state/edits/tie-back-edits'
import { useApp } from '../../state/store'
import { typeLoop } from '../../state/typed/put'
import { PartField } from '../fields/PartField'
import { QuantityField } from '../fields/QuantityField'
import { CommandButtons } from './CommandButtons'
import css from './inspector.module.css'
import { put } from './put'

const feet: [Foot, string][] = [
  ['strap', 'Strap on loop'],
  ['tensioner', 'Tensioner on loop'],
]

export function TieBackFields({ line, tieBack }: { line: Line; tieBack: TieBack }): JSX.Element {
  const set = (recipe: (t: TieBack) => void): string | null =>
    change('tie-back', tieBack.id, `change ${tieBack.id}`, (f) => recipe(f.tieBack))
  return (
    <>
      {feet.map(([foot, label]) => (
        <QuantityField
          key={foot}
          label={label}
          unit="count"
          value={footLoop(tieBack, foot).index + 1}
          onTake={(v) => typeLoop(tieBack.id, foot, v)}
        />
      ))}
      <PartField
        label="Strap"
        kind="tie-back"
        value={tieBack.part}
        onTake={(v) => void set((t) => put(t, 'part', v ?? t.part))}
      />
      <Legs line={line} tieBack={tieBack} />
      <CommandButtons ids={['edit.nudgeBack', 'edit.nudgeOn', 'edit.delete']} />
    </>
  )
}

/** Both legs as the geometry says: length and angle from the vertical. */
function Legs({ line, tieBack }: { line: Line; tieBack: TieBack }): JSX.Element | null {
  const plan = useApp((s) => s.plan)
  const units = useApp((s) => s.units)
  const girder = girderOf(plan, line)
  const index = line.stanchions.findIndex((s) => s.id === tieBack.stanchion)
  const stanchion = line.stanchions[index]
  const part = stanchion && findPart(plan, stanchion.part, 'stanchion')
  if (!girder || !stanchion || !part) return null
  const legs = tieBackLegs(girder, stanchion, part.height, index === 0 ? -1 : 1, tieBack)
  return (
    <dl className={css.figures}>
      {legs.map((leg) => (
        <div key={leg.which} style={{ display: 'contents' }}>
          <dt>{leg.which === 'strap' ? 'Strap leg' : 'Tensioner leg'}</dt>
          <dd>
            {formatQuantity(leg.length, 'm', units)}, {formatQuantity(leg.angle, 'deg', units)}
          </dd>
        </div>
      ))}
    </dl>
  )
}
