/** Solved lines put back into the equations of mechanics sections 2 and 3, written out anew in tests/support/rope.ts. */
import { describe, expect, it } from 'vitest'
import { expectClose, solvedValue } from '../../tests/support/close'
import { fullModel } from '../../tests/support/lines'
import { expectSpan, plainAbsorber, plainSegment, slopeOf } from '../../tests/support/rope'
import { absorberExtension, absorberSlope, addedRope } from './absorber'
import { type InstalledLine, installedLine, type UnloadedLine, unloadedLine } from './installed'
import { lineLaw } from './line-law'
import { greatestTension, type LoadedChain, solveLoadedChain } from './loaded'
import { type LineModel, lineSet, type SetName } from './model'

const G = 9.80665
const law = { onset: 6000, full: 7000, maxExtension: 0.35 }

describe('the absorber', () => {
  it.each([0, 5999, 6000, 6001, 6500, 7000, 7001, 9500])('gives x_a at %f N, and its slope', (T) => {
    expectClose(absorberExtension(law, T), plainAbsorber(law, T), { abs: 1e-15 })
    if (T === 6000 || T === 7000 || T === 0) return
    const EA = 2.5e5
    const rope = (t: number): number => plainAbsorber(law, t) / (1 + t / EA)
    expectClose(addedRope(law, T, EA).rope, rope(T), { abs: 1e-15 })
    const wanted = slopeOf((t) => plainAbsorber(law, t), T, 0.5)
    expectClose(absorberSlope(law, T), wanted, { abs: 1e-12 })
    expectClose(addedRope(law, T, EA).slope, slopeOf(rope, T, 0.5), { abs: 1e-12 })
  })

  it('is nothing where there is none', () => {
    expect(absorberExtension(null, 8000)).toBe(0)
    expect(absorberSlope(null, 8000)).toBe(0)
    expect(addedRope(null, 8000, 1e6)).toEqual({ rope: 0, slope: 0 })
  })

  it('has the slope of what follows at its onset and at its end', () => {
    expectClose(absorberSlope(law, 6000), 0.35 / 1000, { rel: 1e-12 })
    expectClose(absorberSlope(law, 7000), 1e-7, { rel: 1e-12 })
  })
})

describe('a set', () => {
  it('takes the ends that hurt (mechanics section 1)', () => {
    const soft = lineSet(fullModel(), 'soft')
    expect(soft).toMatchObject({ name: 'soft', stiffness: 2.4e6, pretension: 2700, absorber: law })
    expectClose(soft.thermalFactor, 1 + 1.2e-5 * 30, { abs: 1e-15 })
    const stiff = lineSet(fullModel(), 'stiff')
    expect(stiff).toMatchObject({ stiffness: 3.6e6, absorber: { onset: 7200, full: 9000 } })
    expectClose(stiff.pretension, 3300, { abs: 1e-9 })
    expectClose(stiff.thermalFactor, 1 - 1.2e-5 * 35, { abs: 1e-15 })
    const nominal = lineSet(fullModel(), 'nominal')
    expect(nominal).toMatchObject({ stiffness: 3e6, pretension: 3000, thermalFactor: 1 })
    expect(nominal.absorber).toEqual({ onset: 6600, full: 8000, maxExtension: 0.35 })
    expectClose(nominal.weight, 0.36 * G, { abs: 1e-12 })
    expect(lineSet(fullModel({ absorber: null }), 'soft').absorber).toBeNull()
  })
})

const MODELS: [string, LineModel][] = [
  ['absorber at the end', fullModel()],
  ['absorber at the start', fullModel({ absorberAt: 'start' })],
  ['no absorber', fullModel({ absorber: null })],
  ['pretension within the absorber', fullModel({ pretension: 7000 })],
  ['one span', fullModel({ x: [0, 8], z: [3, 2.7] })],
]
const SETS: SetName[] = ['soft', 'stiff', 'nominal']

const rise = (m: LineModel, i: number): number => m.z[i + 1]! - m.z[i]!
const run = (m: LineModel, i: number): number => m.x[i + 1]! - m.x[i]!
const spansOf = (m: LineModel): number[] => m.x.slice(1).map((_, i) => i)

/** Head movement towards the line at the ends of span i, m. */
function moved(m: LineModel, line: InstalledLine, H: number, i: number): number {
  const first = i === 0 ? (H - line.ends[0]) / m.endStiffness[0] : 0
  const last = i === m.x.length - 2 ? (H - line.ends[1]) / m.endStiffness[1] : 0
  return first + last
}

describe.each(MODELS)('the line with %s', (_, m) => {
  const end = m.absorberAt === 'start' ? 0 : m.x.length - 2
  const tensionAtEnd = (s: { Ta: number; Tb: number }): number => (m.absorberAt === 'start' ? s.Ta : s.Tb)

  it.each(SETS)('is installed in balance, %s', (name) => {
    const line = solvedValue(installedLine(m, name))
    const { set } = line
    for (const i of spansOf(m)) {
      expectSpan(line.spans[i]!, run(m, i), rise(m, i), set.stiffness, set.weight, `span ${i}`)
      if (i > 0) expectClose(line.spans[i]!.Ta, line.spans[i - 1]!.Tb, { rel: 1e-10 })
    }
    expectClose(tensionAtEnd(line.spans[end]!), set.pretension, { rel: 1e-10 })
    const out = plainAbsorber(set.absorber, set.pretension) / (1 + set.pretension / set.stiffness)
    const length = line.spans.reduce((sum, s) => sum + s.L, 0)
    expectClose(line.rope, length - out, { rel: 1e-12 })
    expect(line.ends).toEqual([line.spans[0]!.H, line.spans.at(-1)!.H])
  })

  it.each(SETS)('hangs in service in balance with a sliding rope, %s', (name) => {
    const line = solvedValue(installedLine(m, name))
    const now = solvedValue(unloadedLine(m, line, 'sliding'))
    const { stiffness: EA, weight: w, thermalFactor, absorber } = line.set
    for (const i of spansOf(m)) {
      const s = now.spans[i]!
      expectSpan(s, run(m, i) - moved(m, line, s.H, i), rise(m, i), EA, w, `span ${i}`)
      if (i > 0) expectClose(s.Ta, now.spans[i - 1]!.Tb, { rel: 1e-9 })
    }
    const T = tensionAtEnd(now.spans[end]!)
    const length = now.spans.reduce((sum, s) => sum + s.L, 0)
    const rope = line.rope * thermalFactor + plainAbsorber(absorber, T) / (1 + T / EA)
    expectClose(length, rope, { rel: 1e-11 })
    expectClose(now.tension, T, { rel: 1e-9 })
    expectClose(now.absorberExtension, plainAbsorber(absorber, T), { abs: 1e-9 })
    const shift = [now.spans[0]!.H - line.ends[0], now.spans.at(-1)!.H - line.ends[1]]
    expectClose(now.headShift[0], shift[0]! / m.endStiffness[0], { abs: 1e-12 })
    expectClose(now.headShift[1], shift[1]! / m.endStiffness[1], { abs: 1e-12 })
    expect([now.grip, now.chains.length]).toEqual(['sliding', 1])
  })

  it('keeps each span its own rope where it is held', () => {
    const line = solvedValue(installedLine(m, 'soft'))
    const now = solvedValue(unloadedLine(m, line, 'held'))
    const { stiffness: EA, weight: w, thermalFactor, absorber, pretension } = line.set
    expect(now.chains.length).toBe(m.x.length - 1)
    for (const i of spansOf(m)) {
      const s = now.spans[i]!
      const first = i === 0 ? (s.H - line.spans[i]!.H) / m.endStiffness[0] : 0
      const last = i === m.x.length - 2 ? (s.H - line.spans[i]!.H) / m.endStiffness[1] : 0
      expectSpan(s, run(m, i) - first - last, rise(m, i), EA, w, `span ${i}`)
      const own = i === end ? absorber : null
      const out = (T: number): number => plainAbsorber(own, T) / (1 + T / EA)
      const rope = (line.spans[i]!.L - out(pretension)) * thermalFactor + out(tensionAtEnd(s))
      expectClose(s.L, rope, { rel: 1e-11 }, `rope of span ${i}`)
    }
    expectClose(now.tension, tensionAtEnd(now.spans[end]!), { rel: 1e-9 })
  })
})

it('is not computed where the rope has no pretension, or cannot reach it', () => {
  for (const pretension of [0, -5, 1e-9]) {
    const line = installedLine(fullModel({ pretension }), 'nominal')
    expect(line.ok).toBe(false)
    if (!line.ok) expect(line.why).toMatch(/pretension of .* N/)
  }
})

/** A loaded line put back into its equations. */
function expectLoaded(m: LineModel, line: InstalledLine, now: UnloadedLine, at: number, s: LoadedChain) {
  const { stiffness: EA, weight: w, thermalFactor, absorber, pretension } = line.set
  const sliding = now.grip === 'sliding'
  const i = s.span
  const heldAt = sliding ? line.ends : ([line.spans[i]!.H, line.spans[i]!.H] as const)
  const first = i === 0 ? (s.H - heldAt[0]) / m.endStiffness[0] : 0
  const last = i === m.x.length - 2 ? (s.H - heldAt[1]) / m.endStiffness[1] : 0
  const a = plainSegment(s.H, s.at.V, s.at.L1, EA, w)
  const b = plainSegment(s.H, a.E - s.P, s.at.L2, EA, w)
  expectClose(a.dx, at - first, { abs: 1e-8 }, 'the load sits at its station')
  expectClose(b.dx, run(m, i) - at - last, { abs: 1e-8 })
  expectClose(a.dz + b.dz, rise(m, i), { abs: 1e-8 })
  expectClose(s.height, a.dz, { abs: 1e-9 })
  let length = s.at.L1 + s.at.L2
  const tensions = [a.Ta, a.Tb, b.Ta, b.Tb]
  let [left, right] = [a.Ta, b.Tb]
  for (let j = i - 1; sliding && j >= 0; j--) {
    const o = s.others[j]!
    expectSpan(o, run(m, j) - moved(m, line, o.H, j), rise(m, j), EA, w, `span ${j}`)
    expectClose(o.Tb, left, { rel: 1e-8 }, `tension over head ${j + 1}`)
    left = o.Ta
    length += o.L
    tensions.push(o.Ta, o.Tb)
  }
  for (let j = i + 1; sliding && j < m.x.length - 1; j++) {
    const o = s.others[j]!
    expectSpan(o, run(m, j) - moved(m, line, o.H, j), rise(m, j), EA, w, `span ${j}`)
    expectClose(o.Ta, right, { rel: 1e-8 }, `tension over head ${j}`)
    right = o.Tb
    length += o.L
    tensions.push(o.Ta, o.Tb)
  }
  const end = m.absorberAt === 'start' ? left : right
  const own = sliding || i === (m.absorberAt === 'start' ? 0 : m.x.length - 2) ? absorber : null
  const out = (T: number): number => plainAbsorber(own, T) / (1 + T / EA)
  const bare = sliding ? line.rope : line.spans[i]!.L - out(pretension)
  expectClose(length, bare * thermalFactor + out(end), { rel: 1e-10 }, 'the rope is used up')
  expectClose(s.endTension, end, { rel: 1e-9 })
  expectClose(s.absorberExtension, plainAbsorber(own, end), { abs: 1e-8 })
  expectClose(greatestTension(s), Math.max(...tensions), { rel: 1e-10 })
}

describe.each(MODELS)('under a load, the line with %s', (_, m) => {
  const places = spansOf(m).flatMap((span) => [0.5, 0.2].map((share) => [span, share] as const))

  it.each(places)('is in balance, sliding and soft, span %i at %f of it', (span, share) => {
    const line = solvedValue(installedLine(m, 'soft'))
    const now = solvedValue(unloadedLine(m, line, 'sliding'))
    const at = share * run(m, span)
    const found = solvedValue(lineLaw(now, span, at, 9000))
    for (const P of [0, 300, 1500, 4000, 9000, 14000]) {
      const s = found.solve(P)
      expect(s, `P ${P}`).not.toBeNull()
      expectLoaded(m, line, now, at, s!)
      if (P === 0) continue
      const by = (f: (s: LoadedChain) => number): number => slopeOf((p) => f(found.solve(p)!), P, 1e-3 * P)
      expectClose(
        s!.heightSlope,
        by((q) => q.height),
        { rel: 1e-5, abs: 1e-11 },
        `dz/dP at ${P}`,
      )
      expectClose(
        s!.forceSlope,
        by((q) => q.H),
        { rel: 1e-5, abs: 1e-6 },
        `dH/dP at ${P}`,
      )
      expectClose(
        s!.endTensionSlope,
        by((q) => q.endTension),
        { rel: 1e-5, abs: 1e-6 },
        `dT/dP at ${P}`,
      )
    }
  })

  it('is in balance, held and stiff', () => {
    const line = solvedValue(installedLine(m, 'stiff'))
    const now = solvedValue(unloadedLine(m, line, 'held'))
    for (const span of spansOf(m)) {
      const at = 0.4 * run(m, span)
      const found = solvedValue(lineLaw(now, span, at, 6000))
      for (const P of [200, 3000, 6000]) {
        const s = found.solve(P)!
        expectLoaded(m, line, now, at, { ...s, span })
      }
    }
  })
})

it('is found from a start that is far off', () => {
  const m = fullModel()
  const now = solvedValue(unloadedLine(m, solvedValue(installedLine(m, 'soft')), 'sliding'))
  const near = solveLoadedChain(now.chains[0]!, 1, 4, 3000, { H: 5000, others: [] })!
  for (const H of [20, 300, 60e3, 4e5]) {
    const s = solveLoadedChain(now.chains[0]!, 1, 4, 3000, { H, others: [] })
    expectClose(s?.H, near.H, { rel: 1e-8 }, `from ${H} N`)
  }
})
