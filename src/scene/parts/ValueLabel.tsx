/** The value and step of what is dragged, else what is under the pointer or selected, written beside it. */
import { useMemo } from 'react'
import { headHeight } from '../../geometry/line'
import { loopNumber } from '../../geometry/loops'
import { lerp } from '../../geometry/vec'
import type { Girder, Plan, Vec3 } from '../../plan/types'
import { formatLength, type UnitSystem } from '../../plan/units'
import { girderLength } from '../../state/edits/gaps'
import { loopsBeside } from '../../state/edits/stanchion-edits'
import { type Ref, resolveRef } from '../../state/refs'
import { useApp } from '../../state/store'
import { useLabel } from '../labels/registry'
import { overGirder } from '../place'
import { useSceneState } from '../scene-state'
import { strapLegs } from '../shapes/strap'

/** The value of what is dragged, else of what is under the pointer, else of what is selected. */
export function ValueLabel() {
  const dragged = useSceneState((s) => s.dragged)
  const held = useSceneState((s) => s.held)
  const hover = useApp((s) => s.hover)
  const selected = useApp((s) => s.selection.at(-1) ?? null)
  const plan = useApp((s) => s.plan)
  const units = useApp((s) => s.units)
  const ref = dragged ?? hover ?? selected
  const value = useMemo(() => {
    if (!ref) return null
    // A girder's figures stand in the inspector: in the picture they would lie on its loops all the time.
    return ref.kind === 'girder' && !dragged ? null : valueAt(plan, ref, units)
  }, [ref, dragged, plan, units])
  const text =
    value && dragged ? [value.text, value.step, held].filter(Boolean).join(', ') : (value?.text ?? '')
  useLabel('value', value ? { at: value.at, text, tone: 'value', rank: 100, shift: [0, -26] } : null)
  return null
}

interface Value {
  at: Vec3
  text: string
  /** How it moves while dragged. */
  step: string
}

function valueAt(plan: Plan, ref: Ref, units: UnitSystem): Value | null {
  const found = resolveRef(plan, ref)
  if (found?.kind === 'stanchion') return stanchionValue(plan, ref, units)
  if (found?.kind === 'tie-back') return footValue(plan, ref)
  if (found?.kind === 'obstacle' && found.obstacle.kind === 'box') return boxValue(found.obstacle, units)
  if (found?.kind === 'girder') return girderValue(found.girder, units)
  return null
}

function stanchionValue(plan: Plan, ref: Ref, units: UnitSystem): Value | null {
  const found = resolveRef(plan, ref)
  if (found?.kind !== 'stanchion') return null
  const { line, stanchion } = found
  const girder = plan.girders.find((g) => g.id === line.girder)
  if (!girder) return null
  const loops = loopsBeside(plan, stanchion.id)
  const between = loops ? `, between loops ${loops.before} and ${loops.after}` : ''
  return {
    at: overGirder(girder, stanchion.station, stanchion.offset, headHeight(plan, stanchion) ?? 1),
    text: `${stanchion.id} at ${formatLength(stanchion.station, units)}${between}`,
    step: loops ? 'moves by loop gaps' : 'moves freely',
  }
}

function footValue(plan: Plan, ref: Ref): Value | null {
  const found = resolveRef(plan, ref)
  if (found?.kind !== 'tie-back') return null
  const girder = plan.girders.find((g) => g.id === found.line.girder)
  const legs = girder ? strapLegs(found.line, girder, plan.parts) : []
  const leg = legs.find((l) => l.tieBack === ref.id && (!ref.foot || l.foot === ref.foot))
  if (!leg) return null
  const loop = leg.foot === 'strap' ? found.tieBack.strapLoop : found.tieBack.tensionerLoop
  const angle = `${leg.angle.toFixed(1)} degrees from the vertical`
  return {
    at: ref.foot ? leg.end : leg.head,
    text: `${ref.id} ${leg.foot} on loop ${loopNumber(loop.index)}, ${angle}`,
    step: 'moves from loop to loop',
  }
}

/** How long it is, and where it begins and ends in plan. */
function girderValue(girder: Girder, units: UnitSystem): Value {
  const place = ([x, y]: Vec3): string => `${formatLength(x, units)}, ${formatLength(y, units)}`
  const length = formatLength(girderLength(girder), units)
  const text = `${girder.name} ${length}, from ${place(girder.start)} to ${place(girder.end)}`
  return { at: lerp(girder.start, girder.end, 0.5), text, step: 'Shift keeps right angles' }
}

function boxValue(box: { name: string; center: Vec3; size: Vec3 }, units: UnitSystem): Value {
  const [x, y, z] = box.center
  const at: Vec3 = [x, y, z + box.size[2] / 2]
  const text = `${box.name} at ${formatLength(x, units)}, ${formatLength(y, units)}, top ${formatLength(at[2], units)}`
  return { at, text, step: 'hold Alt to lift' }
}
