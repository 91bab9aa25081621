/** Where stanchions and tie-backs of a line may stand: loop gaps and feet that every rule about places lets pass. */

import { loopStation, rowUnder } from '../../geometry/loops'
import { gapStations, girderLength, tidy } from '../../geometry/propose/gaps'
import type { Girder, Line, Plan, Stanchion, TieBackPart } from '../../plan/types'
import type { Finding } from '../../rules/finding'
import { bareFindings, stops } from './bare'
import { girderOf, type Pattern } from './layout'
import type { Feet, Reason } from './types'

export interface Places {
  girder: Girder
  pattern: Pattern
  /** Stations of all gaps, m, in order. */
  stations: number[]
  /** Whether a stanchion may stand in a gap. */
  fit: boolean[]
  /** What stops the gaps that are not fit. */
  reasons: Reason[]
}

const PLACE_RULES = new Set(['loops-engaged', 'loops-beside', 'bolt-edge', 'bar-size'])

export function reasonsOf(findings: Finding[]): Reason[] {
  const by = new Map<string, Reason>()
  for (const f of findings) if (!by.has(f.rule)) by.set(f.rule, { rule: f.rule, text: f.text })
  return [...by.values()]
}

/** The stanchion that all others are made like. */
function patternOf(plan: Plan, line: Line): Pattern | null {
  const stanchion = line.stanchions[0]
  const any = plan.parts.find((p) => p.kind === 'tie-back')?.id ?? null
  return stanchion ? { stanchion, tieBackPart: line.tieBacks[0]?.part ?? any } : null
}

const withStanchions = (line: Line, stanchions: Stanchion[]): Line => ({ ...line, stanchions, tieBacks: [] })

function placeFindings(plan: Plan, line: Line, pattern: Pattern, stations: number[]): Finding[] {
  const many = stations.map((station, i): Stanchion => ({ ...pattern.stanchion, id: `gap ${i}`, station }))
  return bareFindings(plan, withStanchions(line, many)).filter((f) => PLACE_RULES.has(f.rule) && stops(f))
}

/** All gaps of the row that the line's brackets lie in; null where there is no row or no stanchion to take after. */
export function placesOf(plan: Plan, line: Line): Places | null {
  const girder = girderOf(plan, line)
  const bare = patternOf(plan, line)
  const row = bare && rowUnder(girder, bare.stanchion.offset)
  if (!bare || !row) return null
  const stations = gapStations(girder, row).map(tidy)
  if (stations.length < 2) return null
  const plated = { ...bare, stanchion: { ...bare.stanchion, plate: plan.basis.plateThickness } }
  const found = placeFindings(plan, line, bare, stations)
  const atEdge = found.some((f) => f.rule === 'bolt-edge')
  const pattern = atEdge ? plated : bare
  const failing = atEdge ? placeFindings(plan, line, plated, stations) : found
  const everywhere = failing.some((f) => f.rule === 'bar-size')
  const bad = new Set(failing.map((f) => f.subject))
  const fit = stations.map((_, i) => !everywhere && !bad.has(`gap ${i}`))
  return { girder, pattern, stations, fit, reasons: reasonsOf(failing) }
}

/** Pairs of neighbouring loops on one side of a station, within a strap's reach, the nearest first. */
function pairs(girder: Girder, station: number, side: 1 | -1, reach: number): Feet[] {
  const found: { feet: Feet; along: number }[] = []
  for (const row of girder.loops) {
    for (let i = 0; i + 1 < row.count; i++) {
      const [near, far] = side > 0 ? [i, i + 1] : [i + 1, i]
      const along = (loopStation(row, near) - station) * side
      const stands = loopStation(row, far)
      if (along <= 0 || along > reach || stands < 0 || stands > girderLength(girder)) continue
      const feet = { strapLoop: { row: row.id, index: near }, tensionerLoop: { row: row.id, index: far } }
      found.push({ feet, along })
    }
  }
  return found.sort((a, b) => a.along - b.along).map((f) => f.feet)
}

export interface EndPlace {
  gap: number
  feet: Feet[]
}

/** The feet that an end stanchion in a gap may have: no rule about them fails; those with nothing to look at first. */
export function feetAt(
  plan: Plan,
  line: Line,
  places: Places,
  gap: number,
  side: 1 | -1,
): { feet: Feet[]; reasons: Reason[] } {
  const partId = places.pattern.tieBackPart
  const part = plan.parts.find((p): p is TieBackPart => p.id === partId && p.kind === 'tie-back')
  if (!part) return { feet: [], reasons: [{ rule: 'end-tie-back', text: 'The plan has no tie-back part.' }] }
  const station = places.stations[gap]!
  const all = pairs(places.girder, station, side, part.length)
  if (all.length === 0) {
    const text = `No two loops lie within a strap’s reach on the far side of an end stanchion at ${station.toFixed(2)} m.`
    return { feet: [], reasons: [{ rule: 'end-tie-back', text }] }
  }
  const here: Stanchion = { ...places.pattern.stanchion, id: 'here', role: 'end', station }
  const there: Stanchion = { ...here, id: 'there', station: station - side * 5 }
  const tieBacks = all.map((feet, i) => ({ id: `pair ${i}`, stanchion: 'here', part: part.id, ...feet }))
  const stanchions = side < 0 ? [here, there] : [there, here]
  const found = bareFindings(plan, { ...line, stanchions, tieBacks })
  const on = (i: number): Finding[] => found.filter((f) => f.subject === `pair ${i}`)
  const passing = all.map((feet, i) => ({ feet, i })).filter(({ i }) => !on(i).some(stops))
  const looks = (i: number): number =>
    on(i).filter((f) => f.status === 'warn' && f.rule !== 'loop-side-pull').length
  passing.sort((a, b) => looks(a.i) - looks(b.i) || a.i - b.i)
  const tied = found.filter((f) => f.subject.startsWith('pair ') && stops(f))
  return { feet: passing.map((p) => p.feet), reasons: passing.length > 0 ? [] : reasonsOf(tied) }
}

/** End places from a station outwards (`side` -1: towards the girder's start), at most `count` that have feet. */
export function endPlaces(
  plan: Plan,
  line: Line,
  places: Places,
  at: { station: number; outside: boolean },
  side: 1 | -1,
  count: number,
  feetCount: number,
): { ends: EndPlace[]; reasons: Reason[] } {
  const reach = (s: number): number => (s - at.station) * side
  const order = places.stations
    .map((s, gap) => ({ gap, far: reach(s) }))
    .filter(({ gap, far }) => places.fit[gap] && (!at.outside || far >= -1e-6))
    .sort((a, b) => Math.abs(a.far) - Math.abs(b.far) || b.far - a.far)
  const ends: EndPlace[] = []
  const reasons: Reason[] = []
  for (const { gap } of order) {
    if (ends.length >= count) break
    const { feet, reasons: why } = feetAt(plan, line, places, gap, side)
    if (feet.length > 0) ends.push({ gap, feet: feet.slice(0, feetCount) })
    else reasons.push(...why)
  }
  if (order.length === 0) reasons.push(...places.reasons)
  return { ends, reasons: ends.length > 0 ? [] : reasons.slice(0, 4) }
}
