/** The chain before it moves: where its nodes and masses lie, where connectors are tied. */
import { describe, expect, it } from 'vitest'
import { heightAt, pointAt } from '../../../src/solver/catenary'
import { buildChain, relink } from '../../../src/solver/time/chain'
import { endHeads } from '../../../src/solver/time/end-head'
import { buildMesh, FIXED, FREE, HEAD, type Mesh } from '../../../src/solver/time/mesh'
import { idleTension, startMotion } from '../../../src/solver/time/motion'
import { step } from '../../../src/solver/time/step'
import { tiePoint } from '../../../src/solver/time/tie'
import { ROPE_DAMPING, type TimeFallInput } from '../../../src/solver/time/types'
import { expectClose } from '../../support/close'
import { unlikeLine, W1, W3, worker } from './support'

const cases: [string, TimeFallInput][] = [
  ['sliding, two workers', unlikeLine([W1, W3], 'sliding')],
  ['held, two workers', unlikeLine([W1, W3], 'held')],
  ['held, first span alone', unlikeLine([worker(0, 3)], 'held', 'start')],
  ['sliding, one at the first stanchion', unlikeLine([worker(0, 0.01), W3], 'sliding')],
  ['held, one at the first stanchion', unlikeLine([W3, worker(0, 0.01)], 'held')],
  ['held, everybody at a stanchion', unlikeLine([worker(1, 7.01)], 'held')],
]

const headsOf = (input: TimeFallInput): number[] => {
  const x = [...input.model.x]
  x[0]! += input.line.headShift[0]
  x[x.length - 1]! -= input.line.headShift[1]
  return x
}

describe.each(cases)('the mesh of %s', (_, input) => {
  const mesh = buildMesh(input, {})
  const headX = headsOf(input)
  const { spans } = input.line
  const held = input.grip === 'held'

  it('lies on the resting line, with the rope that is there', () => {
    const total = spans.reduce((sum, s) => sum + s.L, 0)
    expectClose(
      mesh.rest.reduce((a, b) => a + b, 0),
      total,
      { rel: 1e-12 },
      'rope',
    )
    const { stiffness, weight } = input.set
    let s = 0
    for (let i = 0; i < mesh.count; i++) {
      const x = mesh.nodes[4 * i]!
      const z = mesh.nodes[4 * i + 1]!
      let span = 0
      let from = 0
      while (span < 3 && s > from + spans[span]!.L) from += spans[span++]!.L
      const at = pointAt(spans[span]!, s - from, stiffness, weight)
      expectClose(x, headX[span]! + at.dx, { abs: 1e-7 }, `x of ${i}`)
      expectClose(z, input.model.z[span]! + at.dz, { abs: 1e-7 }, `z of ${i}`)
      expectClose(z, input.model.z[span]! + heightAt(spans[span]!, x - headX[span]!, stiffness, weight), {
        abs: 1e-6,
      })
      expect([mesh.nodes[4 * i + 2], mesh.nodes[4 * i + 3]]).toEqual([0, 0])
      s += mesh.rest[i] ?? 0
    }
  })

  it('has half of each neighbour on every node, and the heads at its ends', () => {
    for (let i = 0; i < mesh.count; i++) {
      const rope = ((mesh.rest[i - 1] ?? 0) + (mesh.rest[i] ?? 0)) / 2
      const head = i === 0 ? 5 : i === mesh.count - 1 ? 9 : 0
      expectClose(mesh.mass[i], rope * 0.362 + head, { rel: 1e-12 }, `mass of ${i}`)
    }
  })

  it('has elements of 0.125 m at most, six in the shortest span', () => {
    const longest = Math.min(0.125, ...spans.map((s) => s.L / 6))
    const most = Math.max(...mesh.rest)
    expect(most).toBeLessThanOrEqual(longest * (1 + 1e-9))
    expect(most).toBeGreaterThan(longest * 0.97)
    expect(Math.max(...buildMesh(input, { element: 0.05 }).rest)).toBeLessThanOrEqual(0.05 * (1 + 1e-9))
    expect(buildMesh(input, { element: 5 }).count).toBe(mesh.count)
  })

  it('holds what is held, and lets the rest move', () => {
    const ropeTo = [0]
    for (const s of spans) ropeTo.push(ropeTo[ropeTo.length - 1]! + s.L)
    for (const [j, v] of ropeTo.entries()) expectClose(mesh.ropeTo[j], v, { abs: 1e-12 })
    let fixed = 0
    for (const [j, node] of mesh.headNode.entries()) {
      const end = j === 0 || j === 4
      if (!end && !held) {
        expect(node).toBe(-1)
        continue
      }
      fixed++
      expect(mesh.kind[node]).toBe(end ? HEAD : FIXED)
      expect([mesh.nodes[4 * node], mesh.nodes[4 * node + 1]]).toEqual([headX[j], input.model.z[j]])
    }
    expect([mesh.headNode[0], mesh.headNode[4]]).toEqual([0, mesh.count - 1])
    expect([...mesh.kind].filter((k) => k !== FREE).length).toBe(fixed)
  })

  it('moves in equal pieces between stops, over the spans that move', () => {
    const on = input.workers.filter((_, i) => mesh.ties[i]!.node >= 0).map((w) => w.span)
    const [from, to] = on.length === 0 ? [0, -1] : held ? [Math.min(...on), Math.max(...on)] : [0, 3]
    expect([mesh.from, mesh.to]).toEqual([from, to])
    const stops = new Set([0, mesh.count - 1, ...mesh.headNode, ...mesh.ties.map((t) => t.node)])
    let at = -1
    for (const p of mesh.pieces) {
      if (at >= 0) expect(p.first).toBe(at)
      at = p.last
      expect(stops.has(p.first) && stops.has(p.last)).toBe(true)
      for (let e = p.first; e < p.last; e++) expect(mesh.rest[e]).toBe(p.rest)
      for (let n = p.first + 1; n < p.last; n++) expect(stops.has(n)).toBe(false)
    }
    const longest = Math.min(0.125, ...spans.map((s) => s.L / 6))
    for (const p of mesh.pieces) {
      const rope = (p.last - p.first) * p.rest
      expect(p.last - p.first).toBe(Math.ceil(rope / longest - 1e-9))
    }
    expect(mesh.rest.length).toBe(mesh.count - 1)
    if (on.length === 0) return expect(mesh.pieces).toEqual([])
    const first = held ? mesh.headNode[from]! : 0
    const last = held ? mesh.headNode[to + 1]! : mesh.count - 1
    expect([mesh.pieces[0]!.first, at]).toEqual([first, last])
  })

  it('has a node where each connector is tied, or a stanchion', () => {
    for (const [i, w] of input.workers.entries()) {
      const tie = mesh.ties[i]!
      if (tie.node < 0) {
        const j = w.x < 1 ? 0 : 1
        expect(tie).toEqual({ node: -1, stanchion: j, x: headX[j], z: input.model.z[j] })
        continue
      }
      expect(tie.stanchion).toBe(-1)
      expectClose(tie.x, w.x, { abs: 1e-9 })
      const { stiffness, weight } = input.set
      const height = heightAt(input.line.spans[w.span]!, w.x - headX[w.span]!, stiffness, weight)
      expectClose(tie.z, input.model.z[w.span]! + height, { abs: 1e-9 })
      expect([tie.x, tie.z]).toEqual([mesh.nodes[4 * tie.node], mesh.nodes[4 * tie.node + 1]])
    }
  })

  it('pulls at its heads as the spans do that stay as they are', () => {
    const still = spans.filter((_, i) => i < mesh.from || i > mesh.to)
    const tensions = still.flatMap((s) => [
      Math.hypot(s.H, s.V),
      Math.hypot(s.H, input.set.weight * s.L - s.V),
    ])
    expectClose(idleTension(input, mesh), Math.max(0, ...tensions), { rel: 1e-12 })
    const { motion } = startMotion(input, {})
    const want = new Float64Array(10)
    for (const [i, s] of spans.entries()) {
      if (i >= mesh.from && i <= mesh.to) continue
      // Towards greater x and down; the spring of the last head carries it towards smaller x.
      want[2 * i]! += s.H
      want[2 * i + 1]! += s.V
      want[2 * i + 2]! += i === 3 ? s.H : -s.H
      want[2 * i + 3]! += input.set.weight * s.L - s.V
    }
    for (const [i, v] of want.entries()) expectClose(motion.idle[i], v, { abs: 1e-9 }, `idle ${i}`)
    const heads = endHeads(input, mesh)
    const sides = [0, 4].filter((j) => (j === 0 ? mesh.from === 0 && mesh.to >= 0 : mesh.to === 3))
    expect(heads.map((h) => h.stanchion)).toEqual(sides)
    for (const h of heads) {
      const first = h.stanchion === 0
      expect(h).toEqual({
        node: first ? 0 : mesh.count - 1,
        towards: first ? 1 : -1,
        K: first ? 2e5 : 4e5,
        pull: spans[first ? 0 : 3]!.H,
        x: headX[h.stanchion],
        measured: input.model.x[h.stanchion],
        stanchion: h.stanchion,
      })
    }
    expect(motion.held).toEqual(
      mesh.headNode.flatMap((node, stanchion) =>
        held && stanchion > 0 && stanchion < 4 ? [{ node, stanchion }] : [],
      ),
    )
  })

  it('hangs still, but for what the straight elements lack of the curve, and the books agree', () => {
    const { motion, stepsPerBlock } = startMotion(input, {})
    for (const b of motion.bodies) b.stepsOff = Number.POSITIVE_INFINITY
    for (let i = 0; i < 4 * stepsPerBlock; i++) step(motion)
    const { nodes, count } = motion.chain.mesh
    for (let i = 0; i < count; i++) {
      expectClose(nodes[4 * i], mesh.nodes[4 * i]!, { abs: 2e-5 }, `x of ${i}`)
      expectClose(nodes[4 * i + 1], mesh.nodes[4 * i + 1]!, { abs: 2e-5 }, `z of ${i}`)
    }
  })
})

it('ties two connectors to one node where they are within 30 mm of each other', () => {
  const near = buildMesh(unlikeLine([W1, worker(1, 11.0295), worker(1, 10.9705)], 'sliding'), {})
  expect(near.ties.map((t) => t.node)).toEqual([near.ties[0]!.node, near.ties[0]!.node, near.ties[0]!.node])
  const apart = buildMesh(unlikeLine([W1, worker(1, 11.0305), worker(1, 10.9695)], 'sliding'), {})
  const [a, b, c] = apart.ties.map((t) => t.node)
  expect([b! - a!, a! - c!]).toEqual([1, 1])
  expect(apart.count).toBe(near.count + 2)
})

it('gives every body its turn, or its delay', () => {
  const workers = [W1, { ...W3, delay: 0.2 }]
  for (const order of ['together', 'in-turn', undefined] as const) {
    const input = { ...unlikeLine(workers, 'sliding'), ...(order ? { order } : {}) }
    const { motion } = startMotion(input, {})
    const waits = motion.bodies.map((b) => b.stepsOff === Number.POSITIVE_INFINITY)
    expect(waits).toEqual([false, order === 'in-turn'])
    expect(motion.sums.length).toBe(motion.chain.mesh.count - 1 + 10)
    expect(motion.absorberElement).toBe(motion.chain.mesh.count - 2)
  }
  expect(startMotion(unlikeLine([W1], 'sliding', 'start'), {}).motion.absorberElement).toBe(0)
})

describe('links of the chain', () => {
  it('go along with the rope that runs over the pulleys', () => {
    const { motion } = startMotion(unlikeLine([W1, W3], 'sliding'), {})
    const { mesh, pulleys } = motion.chain
    for (const b of motion.bodies) b.stepsOff = Number.POSITIVE_INFINITY
    const before = pulleys.map((p) => p.element)
    for (let n = 1; n < mesh.count - 1; n++) mesh.nodes[4 * n + 2] = 30
    for (let i = 0; i < 300; i++) {
      step(motion)
      const over = pulleys.map((p) => p.element)
      expect(motion.chain.links.map((l) => l.element)).toEqual([...over, mesh.count - 2])
      for (const p of pulleys) {
        expect(mesh.nodes[4 * p.element]).toBeLessThanOrEqual(p.x + 1e-9)
        expect(mesh.nodes[4 * p.element + 4]).toBeGreaterThanOrEqual(p.x - 1e-9)
      }
    }
    for (const [i, p] of pulleys.entries()) expect(p.element).toBeLessThan(before[i]!)
  })

  const reached = (mesh: Mesh, j: number): number => {
    let e = 0
    let to = mesh.rest[0]!
    while (to < mesh.ropeTo[j]! - 1e-9) to += mesh.rest[++e]!
    return e
  }

  it.each(['start', 'end'] as const)('one over each pulley, one for the absorber at the %s', (at) => {
    const input = unlikeLine([W1, W3], 'sliding', at)
    const mesh = buildMesh(input, {})
    const dt = 1e-5
    const chain = buildChain(input, mesh, dt)
    expect(chain.pulleys.map((p) => [p.stanchion, p.x, p.z, p.element])).toEqual(
      [1, 2, 3].map((j) => [j, headsOf(input)[j], input.model.z[j], reached(mesh, j)]),
    )
    const own = at === 'start' ? 0 : mesh.count - 2
    const linked = [...chain.pulleys.map((p) => p.element), own]
    expect(chain.links.map((l) => l.element)).toEqual(linked)
    for (const l of chain.links) {
      expectClose(l.k, input.set.stiffness / mesh.rest[l.element]!, { rel: 1e-12 })
      expectClose(l.c, ROPE_DAMPING * l.k, { rel: 1e-12 })
      expect(l.rest).toBe(mesh.rest[l.element])
      expect(l.absorber).toBe(l.element === own ? chain.absorber : null)
    }
    expect(chain.absorber!.extension).toBe(input.line.absorberExtension)
    // Every element once: in a run or as a link; and every end of either is moved by itself.
    const seen = chain.links.map((l) => l.element)
    const ends = new Set<number>()
    for (const r of chain.runs) {
      for (let e = r.first; e < r.last; e++) seen.push(e)
      ends.add(r.first).add(r.last)
      const rest = mesh.rest[r.first]!
      const k = input.set.stiffness / rest
      const want = [k, ROPE_DAMPING * k, rest, dt / (rest * 0.362), 9.80665 * dt, dt]
      for (const [i, v] of want.entries()) expectClose(r.figures[i], v, { rel: 1e-12 }, `figure ${i}`)
    }
    for (const l of chain.links) ends.add(l.element).add(l.element + 1)
    expect(seen.sort((a, b) => a - b)).toEqual(Array.from({ length: mesh.count - 1 }, (_, e) => e))
    expect([...chain.ends]).toEqual([...ends].sort((a, b) => a - b))
    // A pulley that the absorber's element has come to lies in the same link.
    chain.pulleys[0]!.element = own
    relink(chain, own)
    const both = chain.links.find((l) => l.element === own)!
    expect([both.pulley, both.absorber]).toEqual([chain.pulleys[0], chain.absorber])
    expect(chain.links.length).toBe(3)
  })

  it('none over stanchions that hold, and none for an absorber in a span that stays', () => {
    const input = unlikeLine([W1], 'held', 'end')
    const chain = buildChain(input, buildMesh(input, {}), 1e-5)
    expect([chain.pulleys, chain.links, chain.absorber]).toEqual([[], [], null])
    expect(chain.absorberAtRest).toBe(input.line.absorberExtension)
    const near = unlikeLine([W3], 'held', 'end')
    expect(buildChain(near, buildMesh(near, {}), 1e-5).links.length).toBe(1)
    const first = unlikeLine([worker(0, 3)], 'held', 'start')
    expect(buildChain(first, buildMesh(first, {}), 1e-5).links.map((l) => l.element)).toEqual([0])
    const stays = unlikeLine([W3], 'held', 'start')
    expect(buildChain(stays, buildMesh(stays, {}), 1e-5).absorber).toBeNull()
    const nobody = unlikeLine([worker(1, 7.01)], 'sliding', 'end')
    const still = buildChain(nobody, buildMesh(nobody, {}), 1e-5)
    expect([still.pulleys, still.links, still.absorber, still.runs]).toEqual([[], [], null, []])
  })

  it('only a free node without a connector may pass a pulley', () => {
    const { motion } = startMotion(unlikeLine([W1, W3], 'sliding'), {})
    const { mesh } = motion.chain
    const may = Array.from({ length: mesh.count }, (_, n) => motion.mayPass(n))
    const not = [0, mesh.count - 1, ...mesh.ties.map((t) => t.node)]
    for (const [n, yes] of may.entries()) expect(yes, `${n}`).toBe(!not.includes(n))
  })
})

describe('where a connector is tied', () => {
  const input = unlikeLine([W1], 'sliding')
  const headX = headsOf(input)
  const ropeTo = buildMesh(input, {}).ropeTo
  const tied = (span: number, x: number) =>
    tiePoint(input, worker(span, x), headX, [1.07, 1.3, 1.2, 1.25, 1.5], ropeTo)

  it('to the stanchion where one stands within 30 mm', () => {
    for (const [span, x, stanchion] of [
      [0, headX[0]! + 0.0299, 0],
      [0, 6.9701, 1],
      [1, 7.0299, 1],
      [1, 16.9701, 2],
      [2, 17.0299, 2],
      [2, 17.5701, 3],
      [3, headX[4]! - 0.0299, 4],
    ] as const)
      expect(tied(span, x)).toEqual({
        at: -1,
        stanchion,
        x: headX[stanchion],
        z: [1.07, 1.3, 1.2, 1.25, 1.5][stanchion],
      })
    for (const [span, x] of [
      [0, headX[0]! + 0.0301],
      [0, 6.9699],
      [1, 7.0301],
    ] as const)
      expect(tied(span, x).stanchion, `${x}`).toBe(-1)
  })

  it('else to the rope that hangs there', () => {
    const { stiffness, weight } = input.set
    for (const [span, x] of [
      [0, 3.3],
      [1, 8],
      [3, 20],
    ] as const) {
      const p = tied(span, x)
      const s = input.line.spans[span]!
      const at = pointAt(s, p.at - ropeTo[span]!, stiffness, weight)
      expectClose(headX[span]! + at.dx, x, { abs: 1e-10 })
      expectClose(p.z, [1.07, 1.3, 1.2, 1.25][span]! + at.dz, { abs: 1e-10 })
      expect(p.x).toBe(x)
    }
  })
})
