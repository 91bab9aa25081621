/** One step of a chain against the plain sum of the forces on every node, element by element. */
import { describe, expect, it } from 'vitest'
import { GRAVITY } from '../../../src/solver/model'
import { OUT, type RunFigures, sweep, sweepBooked } from '../../../src/solver/time/kernel'
import { freshLink } from '../../../src/solver/time/link'
import { FIXED, FREE, HEAD } from '../../../src/solver/time/mesh'
import { BOOK_EVERY, step } from '../../../src/solver/time/step'
import { expectClose } from '../../support/close'
import { seeded } from '../../support/random'
import { bareMotion } from './support'

const SEED = 20261127
const K = 2e6
const C = 40
const L0 = 0.1
const DT = 1e-5
const M = 0.04

interface Element {
  T: number
  elastic: number
  t: [number, number]
  rate: number
}

function element(n: Float64Array, e: number, k: number, c: number, l0: number): Element {
  const d = [n[4 * e + 4]! - n[4 * e]!, n[4 * e + 5]! - n[4 * e + 1]!] as const
  const l = Math.hypot(...d)
  const t: [number, number] = [d[0] / l, d[1] / l]
  const rate = rateOf(n, e, t)
  return { T: Math.max(0, k * (l - l0) + c * rate), elastic: Math.max(0, k * (l - l0)), t, rate }
}

const rateOf = (n: Float64Array, e: number, t: [number, number]): number =>
  (n[4 * e + 6]! - n[4 * e + 2]!) * t[0] + (n[4 * e + 7]! - n[4 * e + 3]!) * t[1]

/** Nodes in a rough row, some elements taut and some slack, all moving. */
function nodesAt(count: number, seed: number, l0 = L0): Float64Array {
  const r = seeded(seed)
  const n = new Float64Array(4 * count)
  for (let i = 0; i < count; i++) {
    n.set(
      [i * l0 * 1.002 + r.between(-4e-4, 4e-4), r.between(-3e-3, 3e-3), r.between(-3, 3), r.between(-3, 3)],
      4 * i,
    )
  }
  return n
}

describe.each([
  ['plain', sweep],
  ['booked', sweepBooked],
] as const)('a %s sweep', (kind, run) => {
  it.each([SEED, SEED + 1, SEED + 2])(
    'moves inner nodes by their forces and tells those of its ends, seed %i',
    (seed) => {
      const [a, b] = [2, 12]
      const before = nodesAt(15, seed)
      const nodes = before.slice()
      const sum = new Float64Array(14).fill(7)
      const out = new Float64Array(OUT.size)
      const figures: RunFigures = new Float64Array([K, C, L0, DT / M, GRAVITY * DT, DT])
      run(nodes, sum, a, b, figures, out)
      const elements = Array.from({ length: 14 }, (_, e) => element(before, e, K, C, L0))
      expect(elements.slice(a, b).some((e) => e.T === 0)).toBe(true)
      for (let e = 0; e < 14; e++)
        expectClose(sum[e], e >= a && e < b ? 7 + elements[e]!.T : 7, { rel: 1e-9 })
      for (let i = 0; i < 15; i++) {
        const want = before.slice(4 * i, 4 * i + 4)
        if (i > a && i < b) {
          for (const axis of [0, 1]) {
            const F = elements[i]!.T * elements[i]!.t[axis]! - elements[i - 1]!.T * elements[i - 1]!.t[axis]!
            want[2 + axis]! += DT * (F / M - (axis === 1 ? GRAVITY : 0))
            want[axis]! += DT * want[2 + axis]!
          }
        }
        for (const [j, v] of want.entries())
          expectClose(nodes[4 * i + j], v, { abs: 1e-9 }, `node ${i}, ${j}`)
      }
      const [first, last] = [elements[a]!, elements[b - 1]!]
      const force = [first.T * first.t[0], first.T * first.t[1], last.T * last.t[0], last.T * last.t[1]]
      for (const [j, v] of force.entries()) expectClose(out[j], v, { rel: 1e-9, abs: 1e-9 }, `force ${j}`)
      if (kind === 'plain') return
      let lost = 0
      for (let e = a + 1; e < b - 1; e++) {
        const { T, elastic, t, rate } = elements[e]!
        lost += (T - elastic) * (rate + rateOf(nodes, e, t))
      }
      expectClose(out[4], lost, { rel: 1e-9 }, 'loss')
      for (const [at, e] of [
        [OUT.first, first],
        [OUT.last, last],
      ] as const) {
        const want = [e.T - e.elastic, ...e.t, e.rate]
        for (const [j, v] of want.entries())
          expectClose(out[at + j], v, { rel: 1e-9, abs: 1e-9 }, `edge ${at + j}`)
      }
    },
  )
})

it('a run of one element is its own first and last', () => {
  const nodes = nodesAt(2, 5)
  nodes[4] = 0.1005
  const out = new Float64Array(OUT.size)
  const before = nodes.slice()
  sweepBooked(nodes, new Float64Array(1), 0, 1, new Float64Array([K, C, L0, DT / M, GRAVITY * DT, DT]), out)
  expect(nodes).toEqual(before)
  expect(out[0]).not.toBe(0)
  expect(out[0]).toBe(out[2])
  expect(out[1]).toBe(out[3])
  expect(out[4]).toBe(0)
  expect([...out.slice(5, 9)]).toEqual([...out.slice(9, 13)])
})

/** A chain of two pieces between a head and a fixed node, a free end in the middle, moved by `step`. */
function chain(kinds: number[]) {
  const m = bareMotion({
    at: (i) => [i * 0.1003, 0.002 * Math.sin(3 * i)],
    elements: kinds.length - 1,
    rope: 0.1 * (kinds.length - 1),
    EA: 2e5,
    massPerMetre: 0.4,
    fixed: [],
  })
  const r = seeded(SEED)
  const { nodes, kind, mass } = m.chain.mesh
  for (const [i, k] of kinds.entries()) {
    kind[i] = k
    if (k !== FIXED) nodes.set([r.between(-2, 2), k === HEAD ? 0 : r.between(-2, 2)], 4 * i + 2)
  }
  mass[0]! += 1.5
  return m
}

describe('a whole step', () => {
  // A run of several elements, one of one, a link, and the rest.
  it('moves free nodes by rope and weight, a head along the line alone, a fixed node not, and books what damping takes', () => {
    const m = chain([HEAD, FREE, FREE, FREE, FREE, FREE, FREE, FIXED])
    const { nodes, mass, kind } = m.chain.mesh
    const run = m.chain.runs[0]!
    const cut = (first: number, last: number) => ({ ...run, first, last, out: new Float64Array(OUT.size) })
    m.chain.runs = [cut(0, 3), cut(3, 4), cut(5, 7)]
    m.chain.links = [freshLink(2e5, 0.1, 4, null, null)]
    m.chain.ends = Int32Array.from([0, 3, 4, 5, 7])
    const [k, c, l0] = [run.figures[0]!, run.figures[1]!, run.figures[2]!]
    for (let round = 0; round < 12; round++) {
      const before = nodes.slice()
      const lost = m.lost
      const sums = m.sums.slice()
      const elements = Array.from({ length: 7 }, (_, e) => element(before, e, k, c, l0))
      step(m)
      for (let i = 0; i < 8; i++) {
        for (const axis of [0, 1]) {
          const free = kind[i] === FREE || (kind[i] === HEAD && axis === 0)
          const [to, from] = [elements[i], elements[i - 1]]
          const F = (to ? to.T * to.t[axis]! : 0) - (from ? from.T * from.t[axis]! : 0)
          const v =
            before[4 * i + 2 + axis]! + (free ? m.dt * (F / mass[i]! - (axis === 1 ? GRAVITY : 0)) : 0)
          expectClose(nodes[4 * i + 2 + axis], v, { abs: 1e-9 }, `speed of ${i}`)
          expectClose(
            nodes[4 * i + axis],
            before[4 * i + axis]! + (free ? m.dt * v : 0),
            { abs: 1e-12 },
            `place of ${i}`,
          )
        }
      }
      for (const [e, { T }] of elements.entries()) expectClose(m.sums[e]! - sums[e]!, T, { abs: 1e-6 })
      let takes = 0
      for (const [e, { T, elastic, t, rate }] of elements.entries())
        takes += ((T - elastic) * (rate + rateOf(nodes, e, t))) / 2
      expectClose(
        m.lost - lost,
        round % BOOK_EVERY === 0 ? takes * m.dt * BOOK_EVERY : 0,
        { rel: 1e-6, abs: 1e-15 },
        'loss',
      )
      expect(m.steps).toBe(round + 1)
      expectClose(m.time, (round + 1) * m.dt, { rel: 1e-12 })
    }
  })
})
