/** Elements over a pulley and in series with the absorber; nodes that come to a pulley, pass it or stop at it. */
import { describe, expect, it } from 'vitest'
import { absorb, lineAbsorber } from '../../../src/solver/time/line-absorber'
import { freshLink, type Link, pullLink } from '../../../src/solver/time/link'
import { freshPulley, type Pulley, settlePulley } from '../../../src/solver/time/pulley'
import { ROPE_DAMPING } from '../../../src/solver/time/types'
import { expectClose } from '../../support/close'
import { bareMotion } from './support'

const EA = 2e5
const REST = 0.1
const K = EA / REST
const C = ROPE_DAMPING * K

/** Nodes 2 and 3 with speeds, one link between them, heads for a pulley that stands at stanchion 2 of four. */
function linked(link: Link, a: number[], b: number[]) {
  const m = bareMotion({ at: () => [0, 0], elements: 3, rope: 3 * REST, EA, massPerMetre: 0.4, fixed: [] })
  m.chain.mesh.nodes.set([...a, ...b], 8)
  m.chain.links = [link]
  m.sums = new Float64Array(3 + 8)
  return m
}

/** What pulls at node n, N. */
const pullAt = (m: ReturnType<typeof linked>, n: number): number[] => [
  m.chain.force[2 * n]!,
  m.chain.force[2 * n + 1]!,
]

function expectPairs(got: number[], want: number[], what: string): void {
  for (const [i, v] of want.entries()) expectClose(got[i], v, { rel: 1e-9, abs: 1e-9 }, `${what} ${i}`)
}

describe('a link', () => {
  it('without pulley or absorber pulls its nodes together with k (l - l0) + c dl/dt', () => {
    const link = freshLink(EA, REST, 2, null, null)
    const m = linked(link, [1, 2, 0.5, -1], [1.06, 2.0804, -1, 2])
    pullLink(link, m)
    const l = Math.hypot(0.06, 0.0804)
    const t = [0.06 / l, 0.0804 / l]
    const rate = -1.5 * t[0]! + 3 * t[1]!
    const T = K * (l - REST) + C * rate
    expect(T).toBeGreaterThan(100)
    expectPairs(pullAt(m, 2), [T * t[0]!, T * t[1]!], 'first')
    expectPairs(pullAt(m, 3), [-T * t[0]!, -T * t[1]!], 'last')
    expectPairs([...m.sums], [0, 0, T, 0, 0, 0, 0, 0, 0, 0, 0], 'sums')
    expectPairs([link.q, link.rate, link.length], [C * rate, rate, l], 'books')
  })

  it('never pushes: what damps a slack one is all of its pull', () => {
    const slack = freshLink(EA, REST, 2, null, null)
    const m = linked(slack, [0, 0, 0, 0], [0.0999, 0, 9, 0])
    pullLink(slack, m)
    const T = K * -1e-4 + C * 9
    expect(T).toBeGreaterThan(0)
    expectPairs([slack.q, m.sums[2]!], [T, T], 'slack, drawn apart')
    const loose = freshLink(EA, REST, 2, null, null)
    const still = linked(loose, [0, 0, 0, 0], [0.0999, 0, 0, 0])
    pullLink(loose, still)
    expectPairs([loose.q, still.sums[2]!, ...pullAt(still, 2)], [0, 0, 0, 0], 'slack')
    // Run together so fast that the damping takes more than the spring gives: no pull, and all of the spring is taken.
    const fast = freshLink(EA, REST, 2, null, null)
    const n = linked(fast, [0, 0, 9, 0], [0.1001, 0, 0, 0])
    pullLink(fast, n)
    expectPairs([fast.q, n.sums[2]!], [-K * 1e-4, 0], 'run together')
  })

  it('over a pulley has the length of both sides, one tension, and presses on its stanchion', () => {
    const pulley = freshPulley(2, 10, 5, 2, REST)
    const link = freshLink(EA, REST, 2, pulley, null)
    const m = linked(link, [10 - 0.06, 5 - 0.01, 2, 1], [10 + 0.04, 5 - 0.02, -1, 3])
    pullLink(link, m)
    const [r1, r2] = [Math.hypot(0.06, 0.01), Math.hypot(0.04, 0.02)]
    const one = [0.06 / r1, 0.01 / r1]
    const two = [-0.04 / r2, 0.02 / r2]
    const rate = -(2 * one[0]! + one[1]!) - (-two[0]! + 3 * two[1]!)
    const T = K * (r1 + r2 - REST) + C * rate
    expectPairs(pullAt(m, 2), [T * one[0]!, T * one[1]!], 'before')
    expectPairs(pullAt(m, 3), [T * two[0]!, T * two[1]!], 'after')
    // On the stanchion the opposite of both: down is positive in the sums.
    const along = -T * (one[0]! + two[0]!)
    const down = T * (one[1]! + two[1]!)
    expectPairs([...m.sums], [0, 0, T, 0, 0, 0, 0, along, down, 0, 0], 'sums')
  })

  it('with the absorber in it is longer by what that has given, and flows within the step', () => {
    const law = { onset: 3000, full: 4000, maxExtension: 0.5 }
    const absorber = lineAbsorber(law, 0.1)!
    absorber.extension = 0.15
    const link = freshLink(EA, REST, 2, null, absorber)
    const l = REST + 0.05 + 0.004
    const m = linked(link, [0, 0, 0, 0], [l, 0, 3, 0])
    pullLink(link, m)
    const alone = { ...absorber, extension: 0.15, lost: 0 }
    const want = absorb(alone, K * 0.004 + C * 3, K + C / m.dt)
    const flowed = alone.extension - 0.15
    expect(flowed).toBeGreaterThan(1e-6)
    expectPairs([m.sums[2]!, absorber.extension, absorber.lost], [want, alone.extension, alone.lost], 'flow')
    // What the element's own damping takes: its stretch and rate without the flow.
    expectPairs([link.q, link.rate], [want - K * (0.004 - flowed), 3 - (2 * flowed) / m.dt], 'books')
  })

  it('with an absorber that holds is a plain one, shorter by nothing that was there before', () => {
    const absorber = lineAbsorber({ onset: 9000, full: 9500, maxExtension: 0.5 }, 0.1)!
    const link = freshLink(EA, REST, 2, null, absorber)
    const m = linked(link, [0, 0, 0, 0], [REST + 0.002, 0, 1, 0])
    pullLink(link, m)
    expectPairs([m.sums[2]!, link.q, link.rate, absorber.extension], [K * 0.002 + C, C, 1, 0.1], 'holds')
  })
})

describe('a pulley', () => {
  const X = 10
  const Z = 5
  const ZONE = 0.02 * REST
  /** Nodes 0 to 3 along a roof over the pulley: 1 lies before it, 2 after, each so far away. */
  function roof(
    before: number,
    after: number,
    speed: [number, number] = [0, 0],
  ): { p: Pulley; nodes: Float64Array } {
    const left = [-0.8, -0.6]
    const right = [0.6, -0.8]
    const at = (t: number[], r: number, v: number): number[] => [
      X + t[0]! * r,
      Z + t[1]! * r,
      t[0]! * v,
      t[1]! * v,
    ]
    return {
      p: freshPulley(1, X, Z, 1, REST),
      nodes: new Float64Array([
        ...at(left, before + REST, 0),
        ...at(left, before, speed[0]),
        ...at(right, after, speed[1]),
        ...at(right, after + REST, 0),
      ]),
    }
  }
  const yes = (): boolean => true
  const polar = (nodes: Float64Array, n: number): number =>
    Math.hypot(nodes[4 * n]! - X, nodes[4 * n + 1]! - Z)

  it('leaves alone what is clear of its zone', () => {
    const { p, nodes } = roof(0.06, 0.05, [3, -4])
    const was = nodes.slice()
    expect(settlePulley(p, nodes, yes)).toBe(false)
    expect(nodes).toEqual(was)
    expect([p.before.bead, p.after.bead, p.element]).toEqual([false, false, 1])
  })

  it('makes a bead of a node within its zone: on the straight line to its neighbour, with its speed along that', () => {
    for (const side of ['before', 'after'] as const) {
      const near = ZONE * 0.9
      const { p, nodes } = side === 'after' ? roof(0.06, near) : roof(near, 0.06)
      const [n, next] = side === 'after' ? [2, 3] : [1, 0]
      // Off its line by a little, and moving askew: distance and speed from the pulley stay, the rest goes.
      nodes[4 * n + 1]! += 1e-4
      nodes.set([0.3, -0.7], 4 * n + 2)
      const d = [nodes[4 * n]! - X, nodes[4 * n + 1]! - Z]
      const r = Math.hypot(...d)
      const v = (0.3 * d[0]! - 0.7 * d[1]!) / r
      expect(settlePulley(p, nodes, yes)).toBe(false)
      expect(p[side].bead).toBe(true)
      expect(p[side === 'after' ? 'before' : 'after'].bead).toBe(false)
      const far = polar(nodes, next)
      const t = [(nodes[4 * next]! - X) / far, (nodes[4 * next + 1]! - Z) / far]
      expectPairs(
        [...nodes.slice(4 * n, 4 * n + 4)],
        [X + r * t[0]!, Z + r * t[1]!, v * t[0]!, v * t[1]!],
        side,
      )
      // The bead is measured along that line from now on, also where it has swung off it or past the pulley.
      nodes.set([X + 0.003 * t[0]! - 0.01 * t[1]!, Z + 0.003 * t[1]! + 0.01 * t[0]!], 4 * n)
      const link = freshLink(EA, REST, 2, p, null)
      const m = linked(link, [...nodes.slice(4, 8)], [...nodes.slice(8, 12)])
      pullLink(link, m)
      expectClose(p[side].r, 0.003, { rel: 1e-9 })
      expectClose(link.length, 0.063, { rel: 1e-9 })
    }
  })

  it('frees a bead that has left the zone', () => {
    for (const side of ['before', 'after'] as const) {
      const { p, nodes } = side === 'after' ? roof(0.06, ZONE / 2) : roof(ZONE / 2, 0.06)
      const n = side === 'after' ? 2 : 1
      settlePulley(p, nodes, yes)
      const { tx, tz } = p[side]
      nodes.set([X + tx * ZONE * 1.5, Z + tz * ZONE * 1.5], 4 * n)
      expect(settlePulley(p, nodes, yes)).toBe(false)
      expect(p[side].bead).toBe(false)
    }
  })

  it.each(['before', 'after'] as const)(
    'hands on a node that comes to it from %s it, as far past as it went',
    (side) => {
      const { p, nodes } = side === 'after' ? roof(0.06, ZONE / 2, [0, -2]) : roof(ZONE / 2, 0.06, [-2, 0])
      const [n, other] = side === 'after' ? [2, 1] : [1, 2]
      settlePulley(p, nodes, yes)
      const { tx, tz } = p[side]
      const past = ZONE / 4
      nodes.set([X - tx * past, Z - tz * past], 4 * n)
      expect(settlePulley(p, nodes, yes)).toBe(true)
      expect(p.element).toBe(side === 'after' ? 2 : 0)
      // Now a bead on the other side, on the line to the node there, going on at the same speed.
      const there = polar(nodes, other)
      const t = [(nodes[4 * other]! - X) / there, (nodes[4 * other + 1]! - Z) / there]
      expectPairs(
        [...nodes.slice(4 * n, 4 * n + 4)],
        [X + past * t[0]!, Z + past * t[1]!, 2 * t[0]!, 2 * t[1]!],
        'node',
      )
      expect(p[side].bead).toBe(false)
      expect(p[side === 'after' ? 'before' : 'after'].bead).toBe(true)
    },
  )

  it.each(['before', 'after'] as const)('stops a node %s it that may not pass', (side) => {
    const { p, nodes } = side === 'after' ? roof(0.06, ZONE / 2, [0, -2]) : roof(ZONE / 2, 0.06, [-2, 0])
    const n = side === 'after' ? 2 : 1
    settlePulley(p, nodes, yes)
    const { tx, tz } = p[side]
    nodes.set([X - tx * 1e-4, Z - tz * 1e-4], 4 * n)
    const asked: number[] = []
    const no = (node: number): boolean => {
      asked.push(node)
      return false
    }
    expect(settlePulley(p, nodes, no)).toBe(false)
    expect(asked).toEqual([n])
    expect(p.element).toBe(1)
    expectPairs([...nodes.slice(4 * n, 4 * n + 4)], [X, Z, 0, 0], 'node')
    expect(p[side].bead).toBe(true)
  })
})
