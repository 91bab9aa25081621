import { describe, expect, it } from 'vitest'
import { prove } from '../../tests/support/proof'
import { heightAt, segmentSpan, segmentTangent, tensionBelow } from './catenary'

const LBF = 4.4482216152605
const FOOT = 0.3048

/** A level inextensible catenary has its low point in the middle: V = wL/2 at the first end. */
function levelCatenary(H: number, w: number, span: number) {
  const L = ((2 * H) / w) * Math.sinh((w * span) / (2 * H))
  const EA = 1e15
  return { L, sag: -heightAt({ H, V: (w * L) / 2, L }, span / 2, EA, w), T: Math.hypot(H, (w * L) / 2) }
}

/** H of a level catenary with a given sag, by bisection on the closed form sag = (H/w)(cosh(w a/2H) - 1). */
function forceForSag(w: number, span: number, sag: number): number {
  let low = 1e-3 * w * span
  let high = 1e5 * w * span
  for (let i = 0; i < 200; i++) {
    const H = (low + high) / 2
    if ((H / w) * (Math.cosh((w * span) / (2 * H)) - 1) > sag) low = H
    else high = H
  }
  return (low + high) / 2
}

describe('catenary segment against textbooks', () => {
  it('has the tension and length of Beer & Johnston, Vector Mechanics, sample problem 7.10 (exact root)', () => {
    const c = levelCatenary(forceForSag(45, 150, 30), 45, 150)
    const source = 'Beer & Johnston, Vector Mechanics, SP 7.10 (exact root)'
    prove({
      what: 'catenary 150 m, sag 30 m: greatest tension',
      source,
      expected: 5777,
      got: c.T,
      unit: 'N',
      abs: 1,
    })
    prove({
      what: 'catenary 150 m, sag 30 m: length',
      source,
      expected: 164.96,
      got: c.L,
      unit: 'm',
      abs: 0.01,
    })
  })

  it('has the sag of a shallow rope, Beer & Johnston SP 7.9 (parabola)', () => {
    const w = 0.75 * 9.81
    const H = forceForSag(w, 40, 0.5)
    const c = levelCatenary(H, w, 40)
    const source = 'Beer & Johnston, Vector Mechanics, SP 7.9'
    prove({
      what: 'shallow cable 40 m, sag 0.5 m: greatest tension',
      source,
      expected: 2947,
      got: c.T,
      unit: 'N',
      rel: 0.001,
    })
    prove({
      what: 'shallow cable 40 m, sag 0.5 m: length',
      source,
      expected: 40.0167,
      got: c.L,
      unit: 'm',
      abs: 2e-4,
    })
  })

  it('has the sag of Schaum (McLean & Nelson) 7-11: 0.625 lb/ft, 80 ft, 500 lb', () => {
    const w = (0.625 * LBF) / FOOT
    const T = 500 * LBF
    const V = (w * 80 * FOOT) / 2
    const c = levelCatenary(Math.sqrt(T * T - V * V), w, 80 * FOOT)
    prove({
      what: 'rope 80 ft at 500 lbf: sag',
      source: 'Schaum, Engineering Mechanics, 7-11',
      expected: 1.0013 * FOOT,
      got: c.sag,
      unit: 'm',
      rel: 0.001,
    })
  })

  it('has the tension of Schaum 7-12: span 500 ft, sag 50 ft, 0.518 lb/ft', () => {
    const w = (0.518 * LBF) / FOOT
    const c = levelCatenary(forceForSag(w, 500 * FOOT, 50 * FOOT), w, 500 * FOOT)
    const source = 'Schaum, Engineering Mechanics, 7-12 (exact root)'
    prove({
      what: 'catenary 500 ft, sag 50 ft: greatest tension',
      source,
      expected: 353.9 * LBF,
      got: c.T,
      unit: 'N',
      rel: 0.001,
    })
    prove({
      what: 'catenary 500 ft, sag 50 ft: length',
      source,
      expected: 513.1 * FOOT,
      got: c.L,
      unit: 'm',
      rel: 0.0005,
    })
  })
})

/**
 * A weightless cable with point loads as a string of segments: H is the same all along, V drops by each load. Gives the
 * heights of the loads and the tension of each piece.
 */
function loadedCable(H: number, V: number, bays: number[], loads: number[]) {
  let z = 0
  let up = V
  const heights: number[] = []
  const tensions: number[] = []
  bays.forEach((bay, i) => {
    const T = Math.hypot(H, up)
    const at = segmentSpan({ H, V: up, L: (bay * T) / H }, 1e15, 0)
    z += at.dz
    heights.push(z)
    tensions.push(T)
    up -= loads[i] ?? 0
  })
  return { heights, tensions }
}

describe('cables with several loads against textbooks', () => {
  it('Beer & Johnston SP 7.8: 30, 60, 20 kN, right support 6 m higher', () => {
    // The book's equations give Ax = 90 kN and Ay = 25 kN upwards on the cable at A.
    const c = loadedCable(90e3, 25e3, [6, 3, 4.5, 4.5], [30e3, 60e3, 20e3])
    const source = 'Beer & Johnston, Vector Mechanics, SP 7.8 (solved)'
    prove({
      what: 'three loads: B below A',
      source,
      expected: -1.667,
      got: c.heights[0]!,
      unit: 'm',
      abs: 5e-4,
    })
    prove({
      what: 'three loads: D above A',
      source,
      expected: 1.75,
      got: c.heights[2]!,
      unit: 'm',
      abs: 1e-6,
    })
    prove({
      what: 'three loads: right support above A',
      source,
      expected: 6,
      got: c.heights[3]!,
      unit: 'm',
      abs: 1e-6,
    })
    prove({
      what: 'three loads: greatest tension',
      source,
      expected: 123.8e3,
      got: Math.max(...c.tensions),
      unit: 'N',
      rel: 5e-4,
    })
  })

  it('Hibbeler & Gupta Ex 7.13: 4, 15, 3 kN on 18 m, sag 12 m at the 15 kN load', () => {
    const H = (12 * 8 - 4 * 5) / 12
    const c = loadedCable(H * 1e3, 12e3, [3, 5, 8, 2], [4e3, 15e3, 3e3])
    const source = 'Hibbeler & Gupta, Engineering Mechanics, Ex 7.13'
    const wanted = [13.6, 10.2, 9.44, 11.8]
    wanted.forEach((kN, i) => {
      prove({
        what: `level cable: piece ${i + 1}`,
        source,
        expected: kN * 1e3,
        got: c.tensions[i]!,
        unit: 'N',
        rel: 0.005,
      })
    })
    prove({
      what: 'level cable: height of the far support',
      source,
      expected: 0,
      got: c.heights[3]!,
      unit: 'm',
      abs: 1e-9,
    })
  })

  it('Tayal Ex 10.1: 400, 600, 400 N in 2 m bays, right support 2 m higher', () => {
    const source = 'Tayal, Engineering Mechanics, Ex 10.1'
    // V at A from the supports' heights: Xb 1600 N, Yb 1100 N, so 300 N at A.
    const c = loadedCable(1600, 300, [2, 2, 2, 2], [400, 600, 400])
    prove({
      what: 'cable in bays: tension C to A',
      source,
      expected: 1627.9,
      got: c.tensions[0]!,
      unit: 'N',
      rel: 1e-4,
    })
    prove({
      what: 'cable in bays: greatest tension',
      source,
      expected: 1941.6,
      got: Math.max(...c.tensions),
      unit: 'N',
      rel: 1e-4,
    })
    prove({
      what: 'cable in bays: E below B',
      source,
      expected: 1.375,
      got: c.heights[3]! - c.heights[2]!,
      unit: 'm',
      abs: 1e-6,
    })
  })
})

describe('catenary segment by itself', () => {
  const EA = 2.6e6
  const w = 3.55
  it('has derivatives that agree with central differences', () => {
    for (const [H, V, L] of [
      [4000, 20, 9],
      [900, -300, 6],
      [12, 15, 8],
      [20000, 3000, 12],
    ] as const) {
      const t = segmentTangent(H, V, L, EA, w)
      const at = (h: number, v: number, l: number) => segmentSpan({ H: h, V: v, L: l }, EA, w)
      const by = (k: 'dx' | 'dz', i: 0 | 1 | 2): number => {
        const base = [H, V, L]
        const e = 1e-5 * Math.max(1, Math.abs(base[i]!))
        const move = (s: number) => base.map((b, j) => (j === i ? b + s * e : b)) as [number, number, number]
        return (at(...move(1))[k] - at(...move(-1))[k]) / (2 * e)
      }
      const pairs: [number, number][] = [
        [t.xH, by('dx', 0)],
        [t.xV, by('dx', 1)],
        [t.xL, by('dx', 2)],
        [t.zH, by('dz', 0)],
        [t.zV, by('dz', 1)],
        [t.zL, by('dz', 2)],
      ]
      for (const [got, want] of pairs) expect(Math.abs(got - want)).toBeLessThan(1e-7 + 1e-5 * Math.abs(want))
    }
  })

  it('tends to a straight elastic rope as its weight goes to nothing', () => {
    const s = { H: 3000, V: 400, L: 10 }
    const T = Math.hypot(3000, 400)
    for (const light of [1e-3, 1e-6, 1e-9, 0]) {
      const at = segmentSpan(s, EA, light)
      expect(Math.abs(at.dx - ((10 * 3000) / T) * (1 + T / EA))).toBeLessThan(1e-9 + light)
      expect(Math.abs(at.dz + ((10 * 400) / T) * (1 + T / EA))).toBeLessThan(1e-9 + light)
    }
  })

  it('keeps T + T^2/(2EA) - wz the same along the rope', () => {
    const s = { H: 800, V: 600, L: 14 }
    const Ta = Math.hypot(s.H, s.V)
    const Tb = Math.hypot(s.H, s.V - w * s.L)
    expect(tensionBelow(Tb, segmentSpan(s, EA, w).dz, EA, w)).toBeCloseTo(Ta, 8)
  })
})
