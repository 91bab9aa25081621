/** Advice must be true: who follows it has to pass. Every place is tried here, one after another, beside what is advised. */
import { describe, expect, it } from 'vitest'
import { engagedLoops } from '../geometry/loops'
import type { Girder, LoopRow, Plan } from '../plan/types'
import { engagedText, placeAdvice } from './bracket-place'
import type { LegFacts, LineFacts, StanchionFacts, TieBackFacts } from './context'
import { footAdvice, smallerLeg } from './tie-back-foot'

const row: LoopRow = {
  id: 'A',
  first: 0.2,
  spacing: 0.3,
  count: 40,
  offset: 0,
  barDiameter: 0.0127,
  yieldStress: 415e6,
  height: 0.15,
}
const girder = {
  id: 'G',
  start: [0, 0, 10],
  end: [30, 0, 10],
  section: {
    topWidth: 0.5,
    topThickness: 0.05,
    webThickness: 0.2,
    bottomWidth: 0.5,
    bottomThickness: 0.05,
    depth: 1.5,
  },
  loops: [row],
} as unknown as Girder
const line = { girder } as LineFacts
const plan = (engaged: number, beside: number): Plan =>
  ({ units: 'si', basis: { minLoopsEngaged: engaged, minLoopsBeside: beside } }) as Plan
const stanchion = (station: number, tubeLength: number): StanchionFacts =>
  ({ row, stanchion: { station, offset: 0 }, bracket: { tubeLength } }) as StanchionFacts

/** First of the two loops that the advice names, from 0; null where it names none. */
const gapIn = (advice: string): number | null => {
  const named = /between loop (\d+) and loop (\d+)/.exec(advice)
  if (!named) return null
  expect(Number(named[2])).toBe(Number(named[1]) + 1)
  return Number(named[1]) - 1
}

function nearestByTrying(station: number, tube: number, engaged: number, beside: number): number | null {
  let best: number | null = null
  const far = (gap: number): number => Math.abs(row.first + row.spacing * (gap + 0.5) - station)
  for (let gap = 0; gap < row.count - 1; gap++) {
    const at = engagedLoops(girder, row.first + row.spacing * (gap + 0.5), 0, tube)
    const holds = at.loops.length >= engaged && at.before >= beside && at.after >= beside
    if (holds && (best === null || far(gap) < far(best) - 1e-9)) best = gap
  }
  return best
}

describe('where a bracket is to go', () => {
  const cases = [
    [0.25, 1.2, 4, 2],
    [0.25, 1.2, 4, 1],
    [0.25, 1.5, 5, 2],
    [6.13, 1.2, 4, 2],
    [11.9, 1.2, 4, 2],
    [11.9, 1.2, 4, 1],
    [5, 0.6, 2, 1],
    // Loops enough, but too few on the side of the row's end.
    [0.25, 1.2, 3, 2],
    // Nearest would be a place before the first loop or past the last.
    [0, 0.4, 1, 0],
    [12.3, 0.4, 1, 0],
  ] as const
  it.each(cases)(
    'from %d m with a tube of %d m, %d loops, %d beside: the nearest gap that holds',
    (s, tube, n, b) => {
      const expected = nearestByTrying(s, tube, n, b)
      expect(expected).not.toBeNull()
      const gap = gapIn(placeAdvice(plan(n, b), stanchion(s, tube), line))
      const far = (g: number): number => Math.abs(row.first + row.spacing * (g + 0.5) - s)
      expect(far(gap!)).toBeCloseTo(far(expected!), 9)
      const at = engagedLoops(girder, row.first + row.spacing * (gap! + 0.5), 0, tube)
      expect(at.loops.length).toBeGreaterThanOrEqual(n)
      expect(Math.min(at.before, at.after)).toBeGreaterThanOrEqual(b)
    },
  )

  it('nowhere where the tube is too short for so many loops', () => {
    expect(nearestByTrying(6, 0.6, 9, 2)).toBeNull()
    expect(placeAdvice(plan(9, 2), stanchion(6, 0.6), line)).toMatch(/longer tube/)
  })

  it('over a row first of all', () => {
    expect(placeAdvice(plan(4, 2), { ...stanchion(6, 1.2), row: null }, line)).toMatch(/over a loop row/)
  })

  it('names what it engages: none, one, or from first to last', () => {
    const of = (...indices: number[]): string =>
      engagedText({ engaged: indices.map((index) => ({ index })) } as StanchionFacts)
    expect([of(), of(4), of(4, 5, 6)]).toEqual(['no loop', 'loop 5', 'loops 5 to 7'])
  })
})

describe('where the foot of a tie-back is to go', () => {
  const leg = (index: number, of: LoopRow = row): LegFacts =>
    ({ row: of, index, station: of.first + of.spacing * index, role: 'strap' }) as LegFacts
  const tied = (station: number, ...legs: [LegFacts, LegFacts]): TieBackFacts =>
    ({ stanchion: { station }, legs }) as TieBackFacts

  it('is the nearest loop farther out that would do, on the same side', () => {
    const t = tied(6, leg(15), leg(16))
    expect(footAdvice(t, t.legs[0], (along) => along >= 2)).toBe('Move its foot from loop 16 to loop 13.')
    const right = tied(2, leg(10), leg(9))
    expect(footAdvice(right, right.legs[0], (along) => along >= 2)).toBe(
      'Move its foot from loop 11 to loop 14.',
    )
  })

  it('is not the loop of the other leg', () => {
    const t = tied(6, leg(15), leg(14))
    expect(footAdvice(t, t.legs[0], () => true)).toBe('Move its foot from loop 16 to loop 14.')
    const other: LoopRow = { ...row, id: 'B' }
    const apart = tied(6, leg(15), leg(14, other))
    expect(footAdvice(apart, apart.legs[0], () => true)).toBe('Move its foot from loop 16 to loop 15.')
  })

  it('goes the same way along a row that counts backwards', () => {
    const back: LoopRow = { ...row, first: 12, spacing: -0.3 }
    const t = tied(6, leg(25, back), leg(26, back))
    expect(t.legs[0].station).toBeCloseTo(4.5)
    expect(footAdvice(t, t.legs[0], (along) => along >= 2)).toBe('Move its foot from loop 26 to loop 28.')
  })

  it('may be the very first loop, and is none beyond the row', () => {
    const t = tied(2, leg(1), leg(3))
    expect(footAdvice(t, t.legs[0], () => true)).toBe('Move its foot from loop 2 to loop 1.')
    const end = tied(2, leg(0), leg(3))
    expect(footAdvice(end, end.legs[0], () => true)).toMatch(/No loop of row A/)
  })

  it('is anywhere but right beside its stanchion', () => {
    const t = tied(row.first + row.spacing * 4, leg(4), leg(6))
    expect(footAdvice(t, t.legs[0], () => true)).toBe('Move its foot away from the stanchion.')
  })

  it('is told of the leg with the smaller figure', () => {
    const t = tied(6, { ...leg(15), angle: 30 }, { ...leg(14), angle: 20 })
    expect(smallerLeg(t, (l) => l.angle)).toBe(t.legs[1])
    expect(smallerLeg(t, (l) => -l.angle)).toBe(t.legs[0])
  })
})
