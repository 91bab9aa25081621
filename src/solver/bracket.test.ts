import { describe, expect, it } from 'vitest'
import { BOLT_OVER_LOOP, type BracketForces, type BracketLoad, bracketForces } from './bracket'
import { bentCapacity, boltEdgeDistance, straightCapacity } from './bracket-capacity'

/** Mulberry32: seeded numbers in 0..1. */
function random(seed: number): () => number {
  let a = seed
  return () => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

function leftOver(load: BracketLoad, f: BracketForces): [number, number] {
  const half = load.boltsAlong / 2
  const pull = f.loops.reduce((a, b) => a + b, 0)
  const pullMoment = f.loops.reduce((total, p, i) => total + p * load.loops[i]!, 0)
  return [
    f.bolts[0] + f.bolts[1] - pull - load.axial,
    (f.bolts[1] - f.bolts[0]) * half - pullMoment - load.moment,
  ]
}

/** Oracle: every subset of springs solved by Cramer's rule, kept where all of its springs act the way they can. */
function bruteForce(load: BracketLoad): number[] | null {
  const half = load.boltsAlong / 2
  const all = [
    ...load.loops.map((x) => ({ x, k: 1, sign: 1 })),
    { x: -half, k: BOLT_OVER_LOOP, sign: -1 },
    { x: half, k: BOLT_OVER_LOOP, sign: -1 },
  ]
  for (let mask = 1; mask < 1 << all.length; mask++) {
    let s0 = 0
    let s1 = 0
    let s2 = 0
    all.forEach((s, i) => {
      if (!(mask & (1 << i))) return
      s0 += s.k
      s1 += s.k * s.x
      s2 += s.k * s.x * s.x
    })
    const det = s0 * s2 - s1 * s1
    if (det < 1e-9) continue
    const lift = (-load.axial * s2 + load.moment * s1) / det
    const tilt = (-load.moment * s0 + load.axial * s1) / det
    const tiny = 1e-9 * (Math.abs(load.axial) + Math.abs(load.moment))
    const fits = all.every((s, i) => {
      const rise = s.sign * (lift + tilt * s.x)
      return mask & (1 << i) ? rise >= -tiny : rise <= tiny
    })
    if (fits) return load.loops.map((x, i) => (mask & (1 << i) ? Math.max(0, lift + tilt * x) : 0))
  }
  return null
}

describe('bracketForces', () => {
  it('two loops, no bolt pressed: uplift is shared by the lever rule (statics by hand)', () => {
    const f = bracketForces({ loops: [-0.3, 0.3], boltsAlong: 0.1, axial: -1000, moment: 60 })!
    // moment presses the + side: the loop at -0.3 carries 500 + 60/0.6, the other 500 - 60/0.6
    expect(f.loops[0]).toBeCloseTo(600, 9)
    expect(f.loops[1]).toBeCloseTo(400, 9)
    expect(f.bolts).toEqual([0, 0])
  })

  it('axial force within the bolts presses the bolts alone', () => {
    const f = bracketForces({ loops: [-0.45, -0.15, 0.15, 0.45], boltsAlong: 0.3, axial: 3000, moment: 0 })!
    expect(f.loops).toEqual([0, 0, 0, 0])
    expect(f.bolts[0]).toBeCloseTo(1500, 9)
    expect(f.bolts[1]).toBeCloseTo(1500, 9)
  })

  it('a moment alone: one bolt and the far loop make a couple (statics by hand)', () => {
    const f = bracketForces({ loops: [-0.45], boltsAlong: 0.3, axial: 0, moment: 600 })!
    expect(f.loops[0]).toBeCloseTo(600 / (0.45 + 0.15), 9)
    expect(f.bolts[1]).toBeCloseTo(1000, 9)
    expect(f.bolts[0]).toBe(0)
  })

  it('a load exactly over one bolt is carried by that bolt', () => {
    const f = bracketForces({ loops: [0.1], boltsAlong: 0.3, axial: -2000 + 2300, moment: 345 - 200 })!
    // 2000 N up at the loop's x = 0.1 and 2300 N down at the bolt's x = 0.15: the other bolt idles
    expect(f.bolts[0]).toBeCloseTo(0, 6)
    expect(f.bolts[1]).toBeCloseTo(2300, 6)
    expect(f.loops[0]).toBeCloseTo(2000, 6)
    const bare = bracketForces({ loops: [], boltsAlong: 0.3, axial: 2000, moment: -300 })!
    expect(bare.bolts[0]).toBeCloseTo(2000, 6)
    expect(bare.bolts[1]).toBeCloseTo(0, 6)
  })

  it('nothing can hold uplift without loops, nor a moment on loops at one place between no bolts', () => {
    expect(bracketForces({ loops: [], boltsAlong: 0.3, axial: -100, moment: 0 })).toBeNull()
    expect(bracketForces({ loops: [], boltsAlong: 0.3, axial: 100, moment: 16 })).toBeNull()
    expect(bracketForces({ loops: [0.4], boltsAlong: 0.3, axial: -100, moment: 50 })).toBeNull()
    expect(bracketForces({ loops: [0], boltsAlong: 0, axial: 100, moment: 50 })).toBeNull()
    expect(bracketForces({ loops: [0.2], boltsAlong: 0.3, axial: Number.NaN, moment: 0 })).toBeNull()
  })

  it('without load nothing is pulled', () => {
    const f = bracketForces({ loops: [-0.2, 0.2], boltsAlong: 0.3, axial: 0, moment: 0 })!
    expect(f.loops).toEqual([0, 0])
  })

  it('mirror image gives mirror forces', () => {
    const there = bracketForces({ loops: [-0.4, -0.1, 0.3], boltsAlong: 0.3, axial: 4000, moment: 5000 })!
    const back = bracketForces({ loops: [0.4, 0.1, -0.3], boltsAlong: 0.3, axial: 4000, moment: -5000 })!
    there.loops.forEach((p, i) => {
      expect(back.loops[i]).toBeCloseTo(p, 7)
    })
  })

  const seed = 20251125
  it(`agrees with every subset tried in turn and balances within 1e-9 (seed ${seed})`, () => {
    const next = random(seed)
    let held = 0
    for (let run = 0; run < 1500; run++) {
      const count = Math.floor(next() * 9)
      const load: BracketLoad = {
        loops: Array.from({ length: count }, () => next() - 0.5),
        boltsAlong: 0.05 + next() * 0.5,
        axial: (next() - 0.4) * 20000,
        moment: (next() - 0.5) * 20000,
      }
      const got = bracketForces(load)
      const want = bruteForce(load)
      expect(got === null, JSON.stringify(load)).toBe(want === null)
      if (got === null || want === null) continue
      held++
      const scale = Math.abs(load.axial) + Math.abs(load.moment)
      for (const left of leftOver(load, got)) expect(Math.abs(left) / scale).toBeLessThan(1e-9)
      got.loops.forEach((p, i) => {
        expect(Math.abs(p - want[i]!) / scale).toBeLessThan(1e-7)
      })
    }
    expect(held).toBeGreaterThan(800)
  })
})

/**
 * Loop forces of the check cases (an independent solver's): load on the bracket, pull by station. Loops stand at
 * first + 0.3 i, bolts 0.3 m apart, tube 1 m.
 */
describe('bracketForces against an independent solver', () => {
  const cases = [
    {
      name: 'single-12m S1',
      at: 2.05,
      first: 0.1,
      axial: 9702.289,
      moment: 7293.572,
      pull: [7826.977, 3806.808, 0, 0],
    },
    {
      name: 'single-12m S2',
      at: 14.25,
      first: 0.1,
      axial: 10769.86,
      moment: -7377.728,
      pull: [0, 3194.935, 13606.89],
    },
    {
      name: 'single-18m-steep S1',
      at: 2,
      first: 0.266,
      axial: 8586.256,
      moment: 4736.148,
      pull: [8600.5, 1733.545, 0],
    },
    {
      name: 'single-18m-steep S2',
      at: 20.3,
      first: 0.266,
      axial: 6941.102,
      moment: -4367.688,
      pull: [0, 2223.638, 5515.923],
    },
  ]
  it.each(cases)('$name', ({ at, first, axial, moment, pull }) => {
    const stations = Array.from({ length: 80 }, (_, i) => first + 0.3 * i)
    const loops = stations.map((s) => s - at).filter((x) => Math.abs(x) <= 0.5 + 1e-9)
    const got = bracketForces({ loops, boltsAlong: 0.3, axial, moment })!
    expect(got.loops).toHaveLength(pull.length)
    // The published figures carry seven digits: 0.1 N here.
    got.loops.forEach((p, i) => {
      expect(Math.abs(p - pull[i]!)).toBeLessThan(0.1)
    })
  })
})

describe('capacities', () => {
  it('one No. 4 leg of grade 60 yields at 53.4 kN (sources section 7, area 0.20 in2), a loop has two', () => {
    const area = 0.2 * 645.16e-6
    const diameter = Math.sqrt((4 * area) / Math.PI)
    expect(straightCapacity(diameter, 60 * 6.894757e6) / 2).toBeCloseTo(53.4e3, -2)
  })

  it('the same bar bent sideways at 4 in yields at 0.31 kip (sources section 7)', () => {
    expect(bentCapacity(0.0127, 60 * 6.894757e6, 4 * 0.0254)! / 4448.22).toBeCloseTo(0.3125, 3)
    expect(bentCapacity(0.0127, 414e6, 0)).toBeNull()
  })

  it('bolt to edge: half-width less offset less half the bolts', () => {
    expect(boltEdgeDistance(1.07, -0.3, 0.3)).toBeCloseTo(0.085, 12)
    expect(boltEdgeDistance(0.4, 0.3, 0.3)).toBeLessThan(0)
  })
})
