/** Which stanchions of a line stand elsewhere than in another plan. */
import { headHeight } from '../../geometry/line'
import { length, sub } from '../../geometry/vec'
import type { Line, Plan, Vec3 } from '../../plan/types'
import { overGirder } from '../place'

/** Nearer than this two things stand at one place, m. */
const SAME = 1e-4

export const apart = (a: Vec3, b: Vec3): boolean => length(sub(a, b)) > SAME

export interface Moved {
  stanchion: string
  how: 'moved' | 'gone' | 'new'
  /** Head in the other plan and head now; the one that is missing is null. */
  from: Vec3 | null
  to: Vec3 | null
  /** Between the two, m; 0 where one is missing. */
  by: number
}

/** Heads of a line's stanchions by id. */
export function headsOf(plan: Plan, id: string): Map<string, Vec3> {
  const line = plan.lines.find((l) => l.id === id)
  const girder = plan.girders.find((g) => g.id === line?.girder)
  if (!line || !girder) return new Map()
  const head = (s: Line['stanchions'][number]): Vec3 =>
    overGirder(girder, s.station, s.offset, headHeight(plan, s) ?? 0)
  return new Map(line.stanchions.map((s) => [s.id, head(s)]))
}

/** Stanchions of a line that moved, are gone or are new, in the order of the later plan, the gone ones last. */
export function movedStanchions(before: Plan, after: Plan, line: string): Moved[] {
  const [old, now] = [headsOf(before, line), headsOf(after, line)]
  const ids = [...new Set([...now.keys(), ...old.keys()])]
  return ids.flatMap((stanchion): Moved[] => {
    const [from, to] = [old.get(stanchion) ?? null, now.get(stanchion) ?? null]
    if (!from || !to) return [{ stanchion, how: from ? 'gone' : 'new', from, to, by: 0 }]
    return apart(from, to) ? [{ stanchion, how: 'moved', from, to, by: length(sub(from, to)) }] : []
  })
}
