/** The value and step of what is dragged, else what is under the pointer or selected, written beside it. */
import { useMemo } from 'react'
import { useShallow } from 'zustand/react/shallow'
import { headHeight } from '../../geometry/line'
import { loopNumber } from '../../geometry/loops'
import { lerp } from '../../geometry/vec'
import type { Girder, Plan, Vec3 } from '../../plan/types'
import { formatLength, type UnitSystem } from '../../plan/units'
import { girderLength } from '../../state/edits/gaps'
import { loopsBeside } from '../../state/edits/stanchion-edits'
import { pointsOf } from '../../state/edits/transform'
import { type Ref, resolveRef, sameRef } from '../../state/refs'
import { useApp } from '../../state/store'
import { canType } from '../../state/typed/typing'
import { useLabel } from '../labels/registry'
import { overGirder } from '../place'
import { useSceneState } from '../scene-state'
import { strapLegs } from '../shapes/strap'

/** The value of what is dragged, else of what is under the pointer, else of what is selected: that one can be pressed. */
export function ValueLabel() {
  const { dragged, held, point } = useSceneState(
    useShallow(({ dragged, held, point }) => ({ dragged, held, point })),
  )
  const hover = useApp((s) => s.hover)
  const selected = useApp((s) => s.selection.at(-1) ?? null)
  const opens = useApp((s) => s.selection.length === 1 && canType(s, s.selection[0]))
  const plan = useApp((s) => s.plan)
  const units = useApp((s) => s.units)
  const ref = dragged ?? hover ?? selected
  const value = useMemo(() => {
    if (!ref) return null
    if (dragged && point !== null) return pointValue(plan, ref, point, units)
    // The bridge's own figures stand in the inspector: in the picture they would lie on its loops all the time.
    return (ref.kind === 'girder' || ref.kind === 'deck') && !dragged ? null : valueAt(plan, ref, units)
  }, [ref, dragged, point, plan, units])
  const text =
    value && dragged ? [value.text, value.step, held].filter(Boolean).join(', ') : (value?.text ?? '')
  const pressed = opens && ref && !dragged && sameRef(ref, selected) ? { opens: ref } : {}
  useLabel(
    'value',
    value ? { at: value.at, text, tone: 'value', rank: 100, shift: [0, -26], ...pressed } : null,
  )
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
  return placeValue(plan, ref, units)
}

/** Of a deck, a lane, a model: where the first of its points lies. */
function placeValue(plan: Plan, ref: Ref, units: UnitSystem): Value | null {
  const [at] = pointsOf(plan, ref)
  if (!at) return null
  const text = `${nameOf(plan, ref)} at ${placed(at, units)}, elevation ${formatLength(at[2], units)}`
  return { at, text, step: 'hold Alt to lift' }
}

/** Of the end of a girder or the corner of a deck that is dragged; a girder tells its length too. */
function pointValue(plan: Plan, ref: Ref, point: number, units: UnitSystem): Value | null {
  const at = pointsOf(plan, ref)[point]
  const found = resolveRef(plan, ref)
  if (!at || !found) return null
  const length = found.kind === 'girder' ? `, length ${formatLength(girderLength(found.girder), units)}` : ''
  const what = found.kind === 'deck' ? `corner ${point + 1}` : point === 0 ? 'start' : 'end'
  return {
    at,
    text: `${nameOf(plan, ref)}, ${what} at ${placed(at, units)}${length}`,
    step: 'Shift keeps right angles',
  }
}

function nameOf(plan: Plan, ref: Ref): string {
  const found = resolveRef(plan, ref)
  if (found?.kind === 'obstacle') return found.obstacle.name
  if (found?.kind === 'girder') return found.girder.name
  return found?.kind === 'deck' ? found.deck.name : ref.id
}

const placed = ([x, y]: Vec3, units: UnitSystem): string =>
  `${formatLength(x, units)}, ${formatLength(y, units)}`

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
  const length = formatLength(girderLength(girder), units)
  const text = `${girder.name} ${length}, from ${placed(girder.start, units)} to ${placed(girder.end, units)}`
  return { at: lerp(girder.start, girder.end, 0.5), text, step: 'Shift keeps right angles' }
}

function boxValue(box: { name: string; center: Vec3; size: Vec3 }, units: UnitSystem): Value {
  const [x, y, z] = box.center
  const at: Vec3 = [x, y, z + box.size[2] / 2]
  const text = `${box.name} at ${formatLength(x, units)}, ${formatLength(y, units)}, top ${formatLength(at[2], units)}`
  return { at, text, step: 'hold Alt to lift' }
}
