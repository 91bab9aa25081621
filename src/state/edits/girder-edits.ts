/** Girders and their loop rows: add, copy at a spacing, set ends, rows. */

import { usedIds } from '../../plan/ids'
import { type SectionShape, sectionShapes } from '../../plan/sections'
import type { Girder, LoopRow, Plan, Vec3 } from '../../plan/types'
import { girderLength, tidy } from './gaps'
import { freeName, newId } from './ids'

const defaultSection = (): SectionShape =>
  sectionShapes.find((s) => s.id === 'aashto-vi') ?? (sectionShapes[0] as SectionShape)

/** The least length of a girder, m: shorter is a slip of the hand. */
export const LEAST_GIRDER = 0.5

/** A girder from start to end of its top, like the plan's last one or of the usual section; null where it is too short. */
export function addGirder(plan: Plan, start: Vec3, end: Vec3, like?: Partial<Girder>): string | null {
  const plain = Math.hypot(end[0] - start[0], end[1] - start[1])
  if (![...start, ...end].every(Number.isFinite) || plain < LEAST_GIRDER) return null
  const last = plan.girders.at(-1)
  const usual = defaultSection()
  const id = newId(plan, 'G')
  const girder: Girder = {
    id,
    name: freeName(`Girder ${plan.girders.length + 1}`, plan.girders),
    start: [...start],
    end: [...end],
    material: last?.material ?? usual.material,
    section: { ...(last?.section ?? usual.section) },
    loops: [],
    ...like,
  }
  if (!like?.loops) girder.loops = last ? likeRows(plan, girder, last) : [usualRow(plan, girder)]
  plan.girders.push(girder)
  return id
}

/** Rows like another girder's, as many loops as this one has length for. */
function likeRows(plan: Plan, girder: Girder, other: Girder): LoopRow[] {
  const taken = usedIds(plan)
  return other.loops.map((row) => ({
    ...row,
    id: newId(plan, 'R', taken),
    count: Math.max(1, Math.floor((girderLength(girder) - 2 * row.first) / row.spacing + 1e-6) + 1),
  }))
}

/** Shear bars every foot from half a foot in: a figure to change, not one to trust. */
function usualRow(plan: Plan, girder: Girder): LoopRow {
  const [first, spacing] = [0.1524, 0.3048]
  const count = Math.max(1, Math.floor((girderLength(girder) - 2 * first) / spacing + 1e-6) + 1)
  const bar = { barDiameter: 0.0127, yieldStress: 414e6, height: 0.15 }
  return { id: newId(plan, 'R'), first, spacing, count, offset: 0, ...bar }
}

/** Copies a girder n times, each a spacing further to its left (negative: to its right); the new ids in order. */
export function copyGirder(plan: Plan, id: string, times: number, spacing: number): string[] {
  const girder = plan.girders.find((g) => g.id === id)
  if (!girder || !Number.isFinite(spacing) || times < 1) return []
  const level = Math.hypot(girder.end[0] - girder.start[0], girder.end[1] - girder.start[1]) || 1
  const [ux, uy] = [(girder.end[0] - girder.start[0]) / level, (girder.end[1] - girder.start[1]) / level]
  const taken = usedIds(plan)
  return Array.from({ length: Math.min(50, Math.floor(times)) }, (_, i) => {
    const by: Vec3 = [-uy * spacing * (i + 1), ux * spacing * (i + 1), 0]
    const copy = duplicateGirder(plan, girder, by, taken)
    plan.girders.push(copy)
    return copy.id
  })
}

export function duplicateGirder(plan: Plan, girder: Girder, by: Vec3, taken = usedIds(plan)): Girder {
  const loops = girder.loops.map((row) => ({ ...row, id: newId(plan, 'R', taken) }))
  const name = freeName(`Girder ${plan.girders.length + 1}`, plan.girders)
  const ends = { start: shifted(girder.start, by), end: shifted(girder.end, by) }
  return { ...girder, ...ends, section: { ...girder.section }, loops, id: newId(plan, 'G', taken), name }
}

export const shifted = (p: Vec3, by: Vec3): Vec3 => [
  tidy(p[0] + by[0]),
  tidy(p[1] + by[1]),
  tidy(p[2] + by[2]),
]

export function addLoopRow(plan: Plan, girderId: string): string | null {
  const girder = plan.girders.find((g) => g.id === girderId)
  if (!girder) return null
  const last = girder.loops.at(-1)
  const row = last
    ? { ...last, id: newId(plan, 'R'), offset: tidy(-last.offset || 0.3) }
    : usualRow(plan, girder)
  girder.loops.push(row)
  return row.id
}

/** Keeps direction and start, changes the length along the top; false where it would be too short. */
export function setGirderLength(girder: Girder, length: number): boolean {
  const now = girderLength(girder)
  if (!Number.isFinite(length) || length < LEAST_GIRDER || now <= 0) return false
  girder.end = girder.end.map((e, i) =>
    tidy((girder.start[i] ?? 0) + ((e - (girder.start[i] ?? 0)) * length) / now),
  ) as Vec3
  return true
}
