/** Falls put back into the energy balance of mechanics section 4, and heads into statics (section 6). */
import { describe, expect, it } from 'vitest'
import { expectClose, solvedValue } from '../../tests/support/close'
import { fullModel } from '../../tests/support/lines'
import { headStiffness, legStiffness, type StrapLeg, shareHeadPull } from './end-stanchion'
import {
  type EnergyFall,
  type Faller,
  fallAtStanchion,
  fallOnLine,
  fallReach,
  forceBound,
  freeFall,
  giveOf,
  RIGID,
} from './fall-energy'
import { headPulls, loadedPulls, type SpanDirection, unloadedPulls } from './heads'
import { installedLine, unloadedLine } from './installed'
import { type LineLaw, lawAt, lineLaw, nextKnot } from './line-law'

const G = 9.80665
const faller = (change: Partial<Faller> = {}, connector: Partial<Faller['connector']> = {}): Faller => ({
  mass: 100,
  count: 1,
  freeFall: 1.5,
  connector: { stiffness: 50e3, plateau: 4000, maxExtension: 1.2, ...connector },
  ...change,
})

/** U(P) by the trapezoid rule over exact solves, apart from the law's own nodes. */
function workTo(law: LineLaw, P: number): number {
  let [U, d, last] = [0, 0, 0]
  for (let j = 1; j <= 1500; j++) {
    const now = P * (j / 1500) ** 2
    const drop = law.height - law.solve(now)!.height
    U += ((last + now) / 2) * (drop - d)
    d = drop
    last = now
  }
  return U
}

/** n m g (h + d + e) = U(P) + n [F^2/(2k) + Fp x], all in J. */
function expectBalance(f: Faller, got: EnergyFall, U: number): void {
  const { stiffness: k, plateau } = f.connector
  const lost = f.count * f.mass * G * (f.freeFall + got.drop + got.extension)
  const stored = f.count * (got.arrestForce ** 2 / (2 * k) + plateau * got.torn)
  // A law of 20 loads up to 16 kN, twice what usual falls need: its work is good to 1e-4.
  expectClose(U + stored, lost, { rel: 1e-4 }, 'energy')
  expectClose(got.extension, got.arrestForce / k + got.torn, { abs: 1e-12 })
}

describe('free fall (mechanics section 4)', () => {
  it.each([
    ['lanyard', 1.8, 1.4, 1.1, 2.1],
    ['lanyard', 0.5, 1.0, 2.0, 0],
    ['retractable', 0.6, 1.4, 1.1, 0.9],
    ['retractable', 0.6, 1.0, 2.0, 0.6],
  ] as const)('%s of %f m, D-ring %f m, rope %f m up: %f m', (type, length, dRing, height, h) => {
    expectClose(freeFall(type, length, dRing, height), h, { abs: 1e-12 })
  })
})

describe('a fall on a rigid point', () => {
  it.each([
    ['elastic', faller({}, { plateau: 40e3 })],
    ['torn', faller()],
    ['torn to its end', faller({}, { maxExtension: 0.3 })],
    ['heavier than the plateau', faller({ mass: 450 })],
    ['just the weight at its plateau', faller({ mass: 4000 / G })],
    ['no free fall', faller({ freeFall: 0 }, { plateau: 40e3 })],
  ])('%s: the energy closes', (_, f) => {
    const got = solvedValue(fallAtStanchion(f))
    expectBalance(f, got, 0)
    const { plateau, maxExtension } = f.connector
    const [torn, ran] = [got.torn > 0, got.ranOut]
    if (!torn) expect(got.arrestForce).toBeLessThanOrEqual(plateau)
    if (torn && !ran) expect([got.arrestForce, got.torn < maxExtension]).toEqual([plateau, true])
    if (ran) expect([got.torn, got.arrestForce > plateau]).toEqual([maxExtension, true])
    expect([got.drop, got.work, got.state, got.tension]).toEqual([0, 0, null, null])
    expect(got.arrestForce).toBeGreaterThan(f.mass * G)
    const reach = solvedValue(fallReach(f, RIGID))
    expect(reach).toEqual({ arrestForce: got.arrestForce, drop: 0, extension: got.extension })
    expect(forceBound(f)).toBeGreaterThan(got.arrestForce)
  })

  it('is m g + sqrt((m g)^2 + 2 m g k h) where nothing tears; its bound is twice the like', () => {
    const f = faller({}, { plateau: 60e3 })
    const W = 100 * G
    const F = W + Math.sqrt(W * W + 2 * W * 50e3 * 1.5)
    expectClose(solvedValue(fallAtStanchion(f)).arrestForce, F, { rel: 1e-9 })
    expect(solvedValue(fallAtStanchion(f)).ranOut).toBe(false)
    const far = W + Math.sqrt(W * W + 2 * W * 50e3 * 2.7)
    expectClose(forceBound(faller()), 2 * far, { rel: 1e-12 })
    expectClose(forceBound(f), 120e3, { rel: 1e-12 })
  })
})

describe('a fall on a line', () => {
  const now = solvedValue(
    unloadedLine(fullModel(), solvedValue(installedLine(fullModel(), 'soft')), 'sliding'),
  )
  const law = solvedValue(lineLaw(now, 1, 4.25, 16e3))

  it.each([
    ['elastic', faller({ freeFall: 0.2 }, { plateau: 12e3 })],
    ['torn', faller()],
    ['two torn', faller({ count: 2 })],
    ['torn to its end', faller({ freeFall: 2 }, { plateau: 2500, maxExtension: 0.2 })],
    ['two, elastic', faller({ count: 2, freeFall: 0.1, mass: 70 }, { plateau: 8e3 })],
  ])('%s: the energy closes against 1,500 exact solves', (_, f) => {
    const got = solvedValue(fallOnLine(f, law))
    const P = f.count * got.arrestForce
    expectBalance(f, got, workTo(law, P))
    const exact = law.solve(P)!
    expectClose(got.drop, law.height - exact.height, { abs: 1e-9 })
    expectClose(got.tension, Math.max(exact.at.first.Ta, exact.at.second.Tb), { rel: 1e-9 })
    expectClose(got.work, lawAt(law, P).U, { rel: 1e-9 })
    expect(got.state?.P).toBe(P)
    const reach = solvedValue(fallReach(f, giveOf(law)))
    expectClose(reach.drop, got.drop, { abs: 1e-5 })
    expect([reach.arrestForce, reach.extension]).toEqual([got.arrestForce, got.extension])
  })

  it('is not told beyond the loads that the law knows', () => {
    const f = faller({ count: 3, mass: 140, freeFall: 3 }, { plateau: 9000 })
    for (const got of [fallOnLine(f, law), fallReach(f, giveOf(law))]) {
      expect(got.ok).toBe(false)
      if (!got.ok) expect(got.why).toMatch(/no balance below 16000 N: 3 x 140 kg, free fall 3.000 m/)
    }
    expect(giveOf(law).limit).toBe(16e3)
  })

  it('counts the law’s loads for all who fall together: two at 16 kN are 8 kN each', () => {
    const torn = { plateau: 2500, maxExtension: 0.05 }
    const alone = solvedValue(fallOnLine(faller({ freeFall: 2.2 }, torn), law))
    expect(alone.ranOut).toBe(true)
    expect(alone.arrestForce).toBeGreaterThan(5000)
    const two = fallOnLine(faller({ freeFall: 6, count: 2 }, torn), law)
    expect(two.ok, two.ok ? `${two.value.arrestForce} N` : '').toBe(false)
    if (!two.ok) expect(two.why).toMatch(/no balance below 16000 N: 2 x 100 kg/)
  })

  it('has a law that meets its exact solves between the nodes, and through the absorber', () => {
    for (let P = 50; P <= 16e3; P += 397) {
      const drop = law.height - law.solve(P)!.height
      expectClose(lawAt(law, P).d, drop, { rel: 6e-4 }, `d(${P})`)
    }
    expectClose(lawAt(law, 9000).U, workTo(law, 9000), { rel: 1e-4 })
    expect(law.nodes.map((n) => n.P)).toEqual([...law.nodes.map((n) => n.P)].sort((a, b) => a - b))
    const kinks = law.nodes
      .filter((n) => Math.abs(n.above / n.below - 1) > 0.05)
      .map((n) => n.state.endTension)
    expect(kinks.length).toBe(2)
    expectClose(kinks[0], 6000, { rel: 1e-6 })
    expectClose(kinks[1], 7000, { rel: 1e-6 })
  })

  it('adds the work of a cubic: d = P^3 from 1 to 2 makes U = 3/4 (2^4 - 1)', () => {
    const knot = nextKnot({ P: 1, d: 1, below: 3, above: 3, U: 0.75 }, 2, 8, 12)
    expectClose(knot.U, 0.75 * 16, { rel: 1e-12 })
    expect(knot).toMatchObject({ P: 2, d: 8, below: 12, above: 12 })
    const nodes = [{ P: 1, d: 1, below: 3, above: 3, U: 0.75 }, knot]
    for (const P of [1, 1.3, 1.7, 2]) {
      expectClose(lawAt({ nodes }, P).d, P ** 3, { rel: 1e-12 })
      expectClose(lawAt({ nodes }, P).U, 0.75 * P ** 4, { rel: 1e-12 })
    }
  })

  it('pulls every head as the rope on either side of it does (mechanics section 6)', () => {
    const state = solvedValue(fallOnLine(faller(), law)).state!
    const w = now.set.weight
    const directions: SpanDirection[] = [
      [1, 0],
      [0.8, 0.6],
      [1, 0],
      [0.6, -0.8],
    ]
    const pulls = loadedPulls(now, 1, state)
    const heads = headPulls(pulls, directions)
    expect(heads.length).toBe(5)
    const H = pulls.map((p) => p.H)
    expect(H[1]).toBe(state.H)
    expect([H[0], H[3]]).toEqual([state.others[0]!.H, state.others[3]!.H])
    const along = [H[0]!, 0.8 * H[1]! - H[0]!, H[2]! - 0.8 * H[1]!, 0.6 * H[3]! - H[2]!, -0.6 * H[3]!]
    const across = [0, 0.6 * H[1]!, -0.6 * H[1]!, -0.8 * H[3]!, 0.8 * H[3]!]
    heads.forEach((h, j) => {
      expectClose(h.along, along[j]!, { abs: 1e-6 }, `along head ${j}`)
      expectClose(h.across, across[j]!, { abs: 1e-6 }, `across head ${j}`)
      expectClose(h.horizontal, Math.hypot(along[j]!, across[j]!), { abs: 1e-6 })
    })
    // Down: all the weight of the rope and of the load, and nothing else.
    const rope = state.at.L1 + state.at.L2 + state.others.reduce((sum, o) => sum + (o?.L ?? 0), 0)
    const down = heads.reduce((sum, h) => sum + h.down, 0)
    expectClose(down, state.P + w * rope, { rel: 1e-9 })
    expectClose(heads[1]!.down, pulls[0]!.endDown + pulls[1]!.startDown, { rel: 1e-12 })
  })

  it('leaves the neighbours of a held span as they hang unloaded', () => {
    const line = solvedValue(installedLine(fullModel(), 'soft'))
    const held = solvedValue(unloadedLine(fullModel(), line, 'held'))
    const state = solvedValue(lineLaw(held, 2, 2.5, 8000)).solve(5000)!
    const pulls = loadedPulls(held, 2, state)
    const bare = unloadedPulls(held)
    expect([pulls[0], pulls[1], pulls[3]]).toEqual([bare[0], bare[1], bare[3]])
    expectClose(
      pulls[2]!.startDown + pulls[2]!.endDown,
      5000 + held.set.weight * (state.at.L1 + state.at.L2),
      {
        rel: 1e-9,
      },
    )
    expectClose(bare[1]!.startDown + bare[1]!.endDown, held.set.weight * held.spans[1]!.L, { rel: 1e-12 })
  })
})

describe('an end stanchion (mechanics section 6)', () => {
  const legs: StrapLeg[] = [
    { along: 1.2, across: 0.3, drop: 1.1, stiffness: 120e3, slack: false },
    { along: 1.6, across: -0.2, drop: 1.1, stiffness: 120e3, slack: false },
    { along: 1.4, across: 0, drop: 1.1, stiffness: 120e3, slack: true },
    { along: 0, across: 0.5, drop: 1.1, stiffness: 120e3, slack: false },
    { along: 1.5, across: 0.1, drop: 1.1, stiffness: 90e3, slack: true },
  ]
  const support = { headStiffness: 30e3, height: 1.1, legs }

  it('moves as one head: shaft and legs share the pull by what that movement makes in each', () => {
    const [T, down] = [9000, 700]
    const got = shareHeadPull(support, T, down)
    const u = T / headStiffness(support)
    expectClose(got.shaft, 30e3 * u, { rel: 1e-12 })
    let along = got.shaft
    let axial = down
    legs.forEach((leg, i) => {
      const l = Math.sqrt(leg.along ** 2 + leg.across ** 2 + leg.drop ** 2)
      const force = leg.slack ? 0 : ((leg.stiffness * leg.along) / l / l) * u
      expectClose(got.legs[i], force, { abs: 1e-9 }, `leg ${i}`)
      expectClose(legStiffness(leg), leg.slack ? 0 : (leg.stiffness / l) * (leg.along / l) ** 2, {
        abs: 1e-9,
      })
      along += (force * leg.along) / l
      axial += (force * leg.drop) / l
    })
    expectClose(along, T, { rel: 1e-12 }, 'along')
    expectClose(got.axial, axial, { rel: 1e-12 })
    expectClose(got.baseMoment, got.shaft * 1.1, { rel: 1e-12 })
    const slope = (i: number): number => legs[i]!.along / Math.hypot(legs[i]!.along, legs[i]!.across, 1.1)
    expectClose(got.tieBackForce, (T - got.shaft) / ((slope(0) + slope(1)) / 2), { rel: 1e-12 })
  })

  it('carries all on its shaft without a tie-back', () => {
    const got = shareHeadPull({ headStiffness: 30e3, height: 1.2, legs: [] }, 5000, -40)
    expect(got).toEqual({ shaft: 5000, legs: [], axial: -40, baseMoment: 6000, tieBackForce: 0 })
    expect(headStiffness({ headStiffness: 30e3, height: 1.2, legs: [] })).toBe(30e3)
  })
})
