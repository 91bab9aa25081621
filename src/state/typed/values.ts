/** The figures that a thing's handles change, each to be typed instead: what stands beside the handle, in its place. */
import type { Plan, TieBack, Vec3 } from '../../plan/types'
import { type Foot, footLoop } from '../edits/tie-back-edits'
import { pointsOf } from '../edits/transform'
import { type Ref, resolveRef } from '../refs'
import { typeLoop, typePlace, typePoint, typeStation } from './put'

export interface TypedValue {
  label: string
  /** m; a loop's number is a count from 1. */
  unit: 'm' | 'count'
  value: number
  /** Puts it there, one entry in history; the word why where it is refused. */
  take: (value: number) => string | null
}

/** Of the whole thing, or of one of its points: the end of a girder, the corner of a deck. None: it has no handle. */
export function typedValues(plan: Plan, ref: Ref, point?: number): TypedValue[] {
  const found = resolveRef(plan, ref)
  if (found?.kind === 'stanchion') {
    const { station } = found.stanchion
    return [{ label: 'Station', unit: 'm', value: station, take: (v) => typeStation(ref.id, v) }]
  }
  if (found?.kind === 'tie-back') return feetOf(found.tieBack, ref.foot)
  const at = pointsOf(plan, ref)[point ?? 0]
  if (!at) return []
  if (point !== undefined)
    return axesOf(at, (to) => typePoint(ref, point, to)).slice(0, ref.kind === 'deck' ? 2 : 3)
  const box = found?.kind === 'obstacle' && found.obstacle.kind === 'box' ? found.obstacle : null
  return axesOf(at, (to) => typePlace(ref, to), box ? box.size[2] / 2 : null)
}

function feetOf(tieBack: TieBack, only: Foot | undefined): TypedValue[] {
  const feet: [Foot, string][] = [
    ['strap', 'Strap on loop'],
    ['tensioner', 'Tensioner on loop'],
  ]
  return feet
    .filter(([foot]) => !only || foot === only)
    .map(([foot, label]) => ({
      label,
      unit: 'count',
      value: footLoop(tieBack, foot).index + 1,
      take: (v) => typeLoop(tieBack.id, foot, v),
    }))
}

/** A point's three figures. `top`: how far above the point the thing's top lies, where that is what people measure, m. */
function axesOf(at: Vec3, put: (to: Vec3) => string | null, top: number | null = null): TypedValue[] {
  const axes = ['x', 'y', top === null ? 'elevation' : 'top']
  return axes.map((label, i) => {
    const over = i === 2 ? (top ?? 0) : 0
    const moved = (v: number): Vec3 => at.map((old, j) => (i === j ? v - over : old)) as Vec3
    return { label, unit: 'm', value: (at[i] ?? 0) + over, take: (v) => put(moved(v)) }
  })
}
