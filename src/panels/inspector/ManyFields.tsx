import type { JSX } from 'react'
import { edit } from '../../state/edit'
import { middleOf, moveRefs, turnRefs } from '../../state/edits/transform'
import type { Ref } from '../../state/refs'
import { QuantityField } from '../fields/QuantityField'
import { CommandButtons } from './CommandButtons'
import css from './inspector.module.css'

const axes = ['x', 'y', 'elevation'] as const

/** Several things at once: move them by, turn them by. */
export function ManyFields({ refs }: { refs: Ref[] }): JSX.Element {
  const placed = refs.some((r) => r.kind === 'girder' || r.kind === 'deck' || r.kind === 'obstacle')
  return (
    <>
      {placed ? (
        <>
          <div className={css.sub}>Move all by</div>
          {axes.map((axis, i) => (
            <QuantityField
              key={axis}
              label={axis}
              unit="m"
              value={0}
              least={-1e4}
              most={1e4}
              onTake={(v) => moveBy(refs, i, v)}
            />
          ))}
          <QuantityField
            label="Turn all by"
            unit="deg"
            value={0}
            least={-360}
            most={360}
            onTake={(v) => turnBy(refs, v)}
          />
        </>
      ) : null}
      <CommandButtons
        ids={['edit.duplicate', 'edit.copy', 'edit.delete', 'site.addCrossFrame', 'rig.lineOnGirder']}
      />
    </>
  )
}

function moveBy(refs: Ref[], axis: number, by: number): null {
  edit(
    `move ${refs.length} things`,
    (plan) => void moveRefs(plan, refs, [axis === 0 ? by : 0, axis === 1 ? by : 0, axis === 2 ? by : 0]),
  )
  return null
}

function turnBy(refs: Ref[], degrees: number): null {
  edit(`turn ${refs.length} things`, (plan) => void turnRefs(plan, refs, degrees, middleOf(plan, refs)))
  return null
}
