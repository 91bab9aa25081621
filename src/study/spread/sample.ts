/** One sample through the same solver: its worst falls by energy, and which rules their figures break. */
import { midStation } from '../../geometry/line'
import type { Plan } from '../../plan/types'
import { holds } from '../../rules/judge'
import { straightCapacity } from '../../solver/bracket-capacity'
import { besideFalls, type FallCase, fallAt } from '../energy-falls'
import { type LineInput, lineInput } from '../line-input'
import { lineStatics } from '../line-statics'
import { casesOf } from '../stanchions'
import { type StudiedFall, studiedEnergyFall } from '../studied-fall'

/** Loads per line law: fewer than elsewhere. It moves tension by 2e-6 of itself and clearance by 0.02 mm (see the test). */
const LOADS = 8

export interface SampleResult {
  clearance: number
  tension: number
  /** Rules that fail in this sample. */
  fails: string[]
}

/** Rules that a sample is held against. Figures at the edges of ranges are one and the same here, so one corner is all. */
export const SPREAD_RULES = [
  'wire-rope-strength',
  'hardware-strength',
  'stanchion-strength',
  'tie-back-strength',
  'loop-strength',
  'absorber-runs-out',
  'free-fall',
  'arrest-force',
  'deceleration',
  'connector-runs-out',
  'obstacle-gap',
] as const

interface Figures {
  input: LineInput
  plan: Plan
  falls: FallCase[]
  studied: StudiedFall[]
  tension: number
}

/** Null where a fall could not be computed. `room`: clearance that is there, m; null: nothing below limits it. */
export function runSample(plan: Plan, room: number | null, loads = LOADS): SampleResult | null {
  const line = plan.lines[0]!
  const input = lineInput(plan, line)
  const statics = lineStatics(input.model, loads)
  const corner = { grip: input.grip, line: 'soft', connector: 'low' } as const
  const falls = input.stanchions
    .slice(1)
    .flatMap((_, span) =>
      input.workers.map((who) => fallAt(input, statics, corner, midStation(input.geometry, span), who)),
    )
  if (falls.length === 0 || falls.some((f) => !f.fall.ok)) return null
  const studied = falls.map((c) => studiedEnergyFall(c, plan.basis.marginBelow))
  const clearance = Math.max(...studied.map((s) => s.fall.clearance ?? Number.NaN))
  const tension = Math.max(...studied.map((s) => s.fall.tension ?? 0))
  const figures: Figures = { input, plan, falls, studied, tension }
  const fails = [...strengthFails(figures), ...crewFails(figures)]
  if (room !== null && clearance > room) fails.push('obstacle-gap')
  return { clearance, tension, fails }
}

function strengthFails({ input, plan, studied, tension }: Figures): string[] {
  const factor = plan.basis.safetyFactor
  const weak = (capacity: number, demand: number): boolean =>
    demand > 0 && !holds(capacity / demand, factor, 'at least')
  const { rope, absorber, hardware } = input
  const fails: string[] = []
  if (weak(rope.breakingStrength * rope.termination, tension)) fails.push('wire-rope-strength')
  const series = [...hardware, ...(absorber ? [absorber] : [])]
  if (series.some((p) => weak(p.breakingStrength, tension))) fails.push('hardware-strength')
  const run = Math.max(...studied.map((s) => s.fall.absorberExtension ?? 0))
  if (absorber && !holds(run, absorber.maxExtension, 'at most')) fails.push('absorber-runs-out')
  const broken = { head: false, leg: false, loop: false }
  input.stanchions.forEach((s, i) => {
    const { row } = s.engaged
    const loop = row ? straightCapacity(row.barDiameter, row.yieldStress) : 0
    for (const c of casesOf(input, i, studied)) {
      const lift = Math.max(0, -c.shares.axial)
      broken.head ||=
        weak(s.part.headCapacity, c.shares.shaft) ||
        weak(s.part.axialCapacity, c.shares.axial) ||
        weak(s.bracket.upliftCapacity, lift)
      broken.leg ||= s.tieBacks.some((t, k) =>
        [2 * k, 2 * k + 1].some((j) => weak(t.part.breakingStrength, c.shares.legs[j] ?? 0)),
      )
      broken.loop ||= c.loops === null || c.loops.length === 0 || weak(loop, Math.max(0, ...c.loops))
    }
  })
  if (broken.head) fails.push('stanchion-strength')
  if (broken.leg) fails.push('tie-back-strength')
  if (broken.loop) fails.push('loop-strength')
  return fails
}

function crewFails({ input, plan, studied, falls }: Figures): string[] {
  const { basis } = plan
  const bad = new Set<string>()
  const look = (
    connector: FallCase['connector'],
    free: number,
    force: number,
    extension: number,
    torn: number,
  ) => {
    if (!holds(free, Math.min(basis.maxFreeFall, connector.ratedFreeFall), 'at most')) bad.add('free-fall')
    if (!holds(force, basis.maxArrestForce, 'at most')) bad.add('arrest-force')
    if (!holds(extension, basis.maxDeceleration, 'at most')) bad.add('deceleration')
    if (!holds(torn, connector.maxExtension, 'less than')) bad.add('connector-runs-out')
  }
  studied.forEach(({ fall: f }, i) => {
    look(
      falls[i]!.connector,
      f.freeFall ?? 0,
      f.arrestForce ?? 0,
      f.connectorExtension ?? 0,
      f.connectorTorn ?? 0,
    )
  })
  for (const b of besideFalls(input)) {
    if (b.fall.ok)
      look(b.connector, b.freeFall, b.fall.value.arrestForce, b.fall.value.extension, b.fall.value.torn)
    else bad.add('arrest-force')
  }
  return [...bad]
}
