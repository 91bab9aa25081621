/** Both states of a line as two tapes over the same stations, what moved joined from the upper to the lower one. */
import { type Join, joinedTapes } from '../../drawings/joined-tapes'
import type { SvgElement } from '../../drawings/svg'
import { tape, tapeWindow } from '../../drawings/tape'
import type { Theme } from '../../drawings/theme'
import type { Window } from '../../drawings/view'
import type { Line } from '../../plan/types'
import { formatLength, type UnitSystem } from '../../plan/units'
import type { Comparison, Studied } from './index'
import { changedLines } from './lines'

export interface TapePair {
  line: string
  name: string
  before: ReturnType<typeof tape>
  after: ReturnType<typeof tape>
  joins: Join[]
  /** Before above, after below. */
  picture: SvgElement
}

export interface TapeSize {
  width: number
  height: number
  theme: Theme
  /** Those of the later plan where absent. */
  units?: UnitSystem
}

/** One pair for each line that both plans have and that a change or another number touches; ropes are left out. */
export function tapePairs(before: Studied, after: Studied, c: Comparison, size: TapeSize): TapePair[] {
  const touched = new Set(changedLines(before.plan, after.plan, c))
  return after.plan.lines.flatMap((line) => {
    const was = before.plan.lines.find((l) => l.id === line.id)
    return was && touched.has(line.id) ? [tapePair([before, was], [after, line], c, size)] : []
  })
}

type Side = [Studied, Line]

function tapePair([before, was]: Side, [after, line]: Side, c: Comparison, size: TapeSize): TapePair {
  const units = size.units ?? after.plan.units
  const stations = union(tapeWindow(before.plan, was), tapeWindow(after.plan, line))
  const selected = movedRefs(c, line.id)
  const one = (s: Studied, l: Line) =>
    tape({ plan: s.plan, line: l, results: s.results, rope: null, selected, units }, { ...size, stations })
  const pair = { before: one(before, was), after: one(after, line), joins: joinsOf(was, line, units) }
  const picture = joinedTapes(
    {
      title: `Tapes of ${line.name}, before and after`,
      above: { tape: pair.before, word: 'Before' },
      below: { tape: pair.after, word: 'After' },
      joins: pair.joins,
    },
    size.theme,
  )
  return { line: line.id, name: line.name, ...pair, picture }
}

/** Nearer than this two stations are one, m. */
const SAME = 1e-4

/** Stanchions whose station differs, and those that one side does not have. */
function joinsOf(was: Line, line: Line, units: UnitSystem): Join[] {
  const old = new Map(was.stanchions.map((s) => [s.id, s.station]))
  const now = new Map(line.stanchions.map((s) => [s.id, s.station]))
  return [...new Set([...old.keys(), ...now.keys()])].flatMap((id): Join[] => {
    const [from, to] = [old.get(id) ?? null, now.get(id) ?? null]
    const ref = `stanchion:${id}`
    if (from === null || to === null)
      return [{ ref, from, to, text: `${id} ${from === null ? 'new' : 'gone'}` }]
    const by = Math.abs(to - from)
    return by > SAME ? [{ ref, from, to, text: `${id} moved ${formatLength(by, units)}` }] : []
  })
}

const union = (a: Window, b: Window): Window => ({
  low: Math.min(a.low, b.low),
  high: Math.max(a.high, b.high),
})

/** What is drawn in the accent: stanchions and tie-backs that were added, removed or changed. */
function movedRefs(c: Comparison, line: string): Set<string> {
  return new Set(c.changes.filter((x) => x.of === line).map((x) => `${x.what}:${x.id}`))
}
