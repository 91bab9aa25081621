import { describe, expect, it } from 'vitest'
import { expectClose, solvedValue } from '../../tests/support/close'
import { prove } from '../../tests/support/proof'
import { installedLine, unloadedLine } from './installed'
import { lawAt, lineLaw } from './line-law'
import { greatestTension, solveLoadedChain } from './loaded'
import type { LineModel } from './model'

const RIGID = 1e15

function model(change: Partial<LineModel> = {}): LineModel {
  return {
    x: [0, 10],
    z: [0, 0],
    massPerMetre: 1e-15,
    thermalExpansion: 0,
    axialStiffness: { low: 2e6, high: 2e6 },
    absorber: null,
    absorberAt: 'end',
    pretension: 1e-3,
    pretensionTolerance: 0,
    installTemperature: 15,
    serviceTemperature: { low: 15, high: 15 },
    endStiffness: [RIGID, RIGID],
    endMass: [0, 0],
    ...change,
  }
}

const lawOf = (m: LineModel, span: number, at: number, limit: number, grip: 'sliding' | 'held' = 'sliding') =>
  solvedValue(
    lineLaw(solvedValue(unloadedLine(m, solvedValue(installedLine(m, 'soft')), grip)), span, at, limit),
  )

describe('taut weightless line under a central load', () => {
  it('has the exact drop and tension: L 10 m, EA 2 MN, P 1 kN', () => {
    const law = lawOf(model(), 0, 5, 1000)
    const end = law.nodes[law.nodes.length - 1]!
    const source = 'exact geometry of a taut line, derived'
    prove({
      what: 'taut line 10 m, 1 kN at mid-span: drop',
      source,
      expected: 0.39748,
      got: end.d,
      unit: 'm',
      abs: 5e-6,
    })
    prove({
      what: 'taut line 10 m, 1 kN at mid-span: tension',
      source,
      expected: 6309.5,
      got: greatestTension(end.state),
      unit: 'N',
      abs: 0.06,
    })
    // Small-sag form d = L (P/8EA)^(1/3), exact for small sag only.
    expectClose(end.d, 0.39685, { rel: 0.002 })
  })

  it('amplifies the load as the published table of sag angles: T/F = 1/(2 sin a)', () => {
    const table = [
      [30, 1],
      [20, 1.462],
      [15, 1.932],
      [10, 2.879],
      [5, 5.737],
      [3, 9.554],
      [2, 14.327],
      [1, 28.649],
    ] as const
    for (const [degrees, ratio] of table) {
      // A load on a very stiff rope whose slack makes just this angle: rope longer than the chord by 1/cos a.
      const a = (degrees * Math.PI) / 180
      const chain = {
        X: [10],
        Z: [0],
        EA: 1e15,
        w: 1e-12,
        give: [0, 0] as [number, number],
        heldAt: [0, 0] as [number, number],
        absorber: null,
        absorberAt: 'end' as const,
        rope: 10 / Math.cos(a),
      }
      const state = solveLoadedChain(chain, 0, 5, 1000, { H: 500, others: [] })
      expect(state).not.toBeNull()
      prove({
        what: `sag angle ${degrees} degrees: tension over load`,
        source: 'OSHA 1926 Subpart M Appendix C (2:1 at 15, 6:1 at 5 degrees); exact sine',
        expected: ratio,
        got: greatestTension(state!) / 1000,
        unit: '',
        abs: 6e-4,
      })
    }
  })
})

describe('elastic catenary with a point load', () => {
  it('moves as the benchmark of Michalos & Birnstiel 1962 and Jayaraman & Knudson 1981 (values from memory)', () => {
    // Two pieces of fixed unstretched length, so the load is tied to the rope: solve the junction with fixed lengths.
    const FT = 0.3048
    const KIP = 4448.2216152605
    const found = junction(412.8837 * FT, 613.0422 * FT, 1000 * FT, 46.12, 0.85 * 19000 * KIP, 8 * KIP)
    const bare = junction(412.8837 * FT, 613.0422 * FT, 1000 * FT, 46.12, 0.85 * 19000 * KIP, 0)
    const source = 'Jayaraman & Knudson 1981 (value from memory), solved independently'
    prove({
      what: 'point-loaded catenary: junction dx',
      source,
      expected: -2.819 * FT,
      got: found.x - bare.x,
      unit: 'm',
      rel: 5e-4,
    })
    prove({
      what: 'point-loaded catenary: junction dy',
      source,
      expected: -18.457 * FT,
      got: found.z - bare.z,
      unit: 'm',
      rel: 5e-4,
    })
    prove({
      what: 'point-loaded catenary: H after',
      source,
      expected: 20.107 * KIP,
      got: found.H,
      unit: 'N',
      rel: 0.002,
    })
    prove({
      what: 'point-loaded catenary: left support tension',
      source,
      expected: 21.117 * KIP,
      got: found.T,
      unit: 'N',
      rel: 0.002,
    })
  })
})

/** The load's place for two segments of given unstretched length: search the station at which the line law uses them. */
function junction(L1: number, L2: number, X: number, w: number, EA: number, P: number) {
  let low = 0.2 * X
  let high = 0.6 * X
  for (let i = 0; i < 80; i++) {
    const x = (low + high) / 2
    const chain = {
      X: [X],
      Z: [0],
      EA,
      w,
      give: [0, 0] as [number, number],
      heldAt: [0, 0] as [number, number],
      absorber: null,
      absorberAt: 'end' as const,
      rope: L1 + L2,
    }
    const s = solveLoadedChain(chain, 0, x, P, { H: 20000, others: [] })
    if (!s) throw new Error(`no solution at ${x}`)
    if (s.at.L1 < L1) low = x
    else high = x
    if (i === 79) return { x, z: s.height, H: s.H, T: s.at.first.Ta }
  }
  throw new Error('unreachable')
}

describe('work of the line law', () => {
  const four = model({
    x: [0, 9, 18, 27, 36],
    z: [0, 0.3, 0.1, 0.4, 0.2],
    massPerMetre: 0.362,
    thermalExpansion: 1.2e-5,
    axialStiffness: { low: 2.6e6, high: 3.9e6 },
    absorber: { onset: { low: 8000, high: 9500 }, full: { low: 10000, high: 12000 }, maxExtension: 1.07 },
    pretension: 4450,
    pretensionTolerance: 0.1,
    serviceTemperature: { low: -15, high: 40 },
    endStiffness: [290000, 300000],
  })

  it.each([
    ['sliding', 0, 4.5],
    ['sliding', 1, 2],
    ['held', 0, 4.5],
    ['held', 3, 7],
  ] as const)(
    'is the integral of P dd, %s rope, span %i at %f m, against 4,000 exact steps',
    (grip, span, at) => {
      const law = lawOf(four, span, at, 9400, grip)
      let U = 0
      let d = 0
      let last = 0
      for (let j = 1; j <= 4000; j++) {
        const P = 9400 * (j / 4000) ** 2
        const s = law.solve(P)
        if (!s) throw new Error(`no solution at ${P}`)
        const drop = law.height - s.height
        U += ((last + P) / 2) * (drop - d)
        d = drop
        last = P
        if (j % 500 === 0) {
          expectClose(lawAt(law, P).U, U, { rel: 1e-5, abs: 0.02 }, `U(${P})`)
          expectClose(lawAt(law, P).d, drop, { rel: 1e-4 }, `d(${P})`)
        }
      }
    },
    30_000,
  )
})

describe('change of state with temperature', () => {
  it('follows the textbook equation, FOSSEE/Scilab 2273 example 3.14 (no wind after)', () => {
    // f in kg/m2: 0.9 kg/m, wind 38.5 kg/m2 on 19.5 mm at 5 degC, half the strength; without wind at 35 degC.
    const G = 9.80665
    const A = 2.4e-4
    const EA = 9.32e9 * A * G
    const span = 300
    const wind = Math.hypot(0.9, 38.5 * 0.0195) * G
    const first = { H: 4000 * G, w: wind }
    // Unstretched length of a level parabola-shallow span at 5 degC with wind; then without wind at 35 degC.
    const L5 = unstretched(first.H, first.w, span, EA)
    const after = solve35(L5 * (1 + 18.44e-6 * 30), 0.9 * G, span, EA)
    const source = 'Scilab textbook companion 2273, example 3.14 (recomputed)'
    prove({
      what: 'change of state 5 to 35 degC: tension',
      source,
      expected: 2868.3 * G,
      got: after.H,
      unit: 'N',
      rel: 0.002,
    })
    prove({
      what: 'change of state 5 to 35 degC: sag',
      source,
      expected: 3.53,
      got: after.sag,
      unit: 'm',
      rel: 0.002,
    })
  })
})

function unstretched(H: number, w: number, span: number, EA: number): number {
  const chain = {
    X: [span],
    Z: [0],
    EA,
    w,
    give: [0, 0] as [number, number],
    heldAt: [0, 0] as [number, number],
    absorber: null,
    absorberAt: 'end' as const,
    rope: span,
  }
  let low = span * 0.9
  let high = span * 1.1
  for (let i = 0; i < 100; i++) {
    const rope = (low + high) / 2
    const s = solveLoadedChain({ ...chain, rope }, 0, span / 2, 0, { H, others: [] })
    if (!s || s.H > H) low = rope
    else high = rope
  }
  return (low + high) / 2
}

function solve35(rope: number, w: number, span: number, EA: number) {
  const chain = {
    X: [span],
    Z: [0],
    EA,
    w,
    give: [0, 0] as [number, number],
    heldAt: [0, 0] as [number, number],
    absorber: null,
    absorberAt: 'end' as const,
    rope,
  }
  const s = solveLoadedChain(chain, 0, span / 2, 0, { H: 30000, others: [] })
  if (!s) throw new Error('no solution')
  return { H: s.H, sag: -s.height }
}
