/** What is noted on the way: means over 5 ms, peaks, the energy by kind, drag and rest. By hand, in small numbers. */
import { describe, expect, it } from 'vitest'
import { GRAVITY } from '../../../src/solver/model'
import { freshBody } from '../../../src/solver/time/body'
import { RESTING_DRAG, restWatch, slow, stopAtFastest } from '../../../src/solver/time/drag'
import { noteHeld, pullHead } from '../../../src/solver/time/end-head'
import { closeEntry, energyError, falling, halfEntry, openBooks } from '../../../src/solver/time/energy'
import { lineAbsorber } from '../../../src/solver/time/line-absorber'
import { freshLink } from '../../../src/solver/time/link'
import { BLOCK_TIME, endBlock, startMeans } from '../../../src/solver/time/means'
import { HEAD } from '../../../src/solver/time/mesh'
import { freshPeaks, notePeaks } from '../../../src/solver/time/peaks'
import { freshPulley } from '../../../src/solver/time/pulley'
import { expectClose } from '../../support/close'
import { bareMotion, worker } from './support'

describe('means over 5 ms', () => {
  it('run over twenty blocks of a quarter of a millisecond', () => {
    expectClose(BLOCK_TIME * 20, 5e-3, { rel: 1e-12 })
  })

  it('are those of the last twenty blocks, and before the start all pulled as at the start', () => {
    const steps = 3
    const sums = new Float64Array([10, -4])
    const means = startMeans(sums, steps)
    expect([...means.mean]).toEqual([10, -4])
    // The first step is in the sums already.
    const values: number[][] = []
    const push = (a: number, b: number): void => {
      values.push([a, b])
      sums[0]! += a
      sums[1]! += b
    }
    for (let block = 0; block < 53; block++) {
      for (let i = block === 0 ? 1 : 0; i < steps; i++) push(block * block + i, block % 7)
      endBlock(means, sums)
      const before: number[][] = Array.from({ length: 20 * steps }, () => [10, -4])
      const last = [...before, ...values].slice(-20 * steps)
      // The first step itself counts as one of those at the start.
      for (const j of [0, 1]) {
        const mean = last.reduce((sum, v) => sum + v[j]!, 0) / (20 * steps)
        expectClose(means.mean[j], mean, { abs: 1e-9 }, `block ${block}, ${j}`)
      }
    }
  })
})

describe('peaks', () => {
  // Three elements, two heads.
  const idle = new Float64Array([100, 20, -50, 0])
  const note = (p: ReturnType<typeof freshPeaks>, mean: number[], time: number): void =>
    notePeaks(p, new Float64Array(mean), 3, idle, time)

  it('keep the greatest tension, where and when, and what the rest of the rope has anyway', () => {
    const p = freshPeaks(2, 500)
    note(p, [400, 499, 500, 9e9, 9e9, 9e9, 9e9], 1)
    expect([p.tension, p.time, p.element]).toEqual([500, 0, 0])
    note(p, [600, 800, 700, 0, 0, 0, 0], 2)
    expect([p.tension, p.time, p.element]).toEqual([800, 2, 1])
    note(p, [0, 0, 801, 0, 0, 0, 0], 3)
    expect([p.tension, p.time, p.element]).toEqual([801, 3, 2])
    note(p, [801, 2, 2, 0, 0, 0, 0], 4)
    expect([p.tension, p.time, p.element]).toEqual([801, 3, 2])
    note(p, [802, 2, 2, 0, 0, 0, 0], 5)
    expect([p.tension, p.time, p.element]).toEqual([802, 5, 0])
  })

  it('keep along and down of each head, and both at the instant of the greatest resultant', () => {
    const p = freshPeaks(2, 0)
    expect(p.heads[1]!.together).toEqual({ along: 0, down: 0 })
    const little = freshPeaks(2, 0)
    note(little, [0, 0, 0, -100, -20, 50.1, 0.2], 0)
    expectClose(little.heads[1]!.together.along, 0.1, { rel: 1e-9 })
    expectClose(little.heads[1]!.together.down, 0.2, { rel: 1e-9 })
    note(p, [0, 0, 0, 200, 30, -40, -8], 1)
    expect(p.heads[0]).toMatchObject({ along: 300, down: 50, together: { along: 300, down: 50 } })
    expect(p.heads[1]).toMatchObject({ along: 90, down: -8, together: { along: 90, down: -8 } })
    note(p, [0, 0, 0, 150, 180, 10, -9], 2)
    expect(p.heads[0]).toMatchObject({ along: 300, down: 200, together: { along: 250, down: 200 } })
    expect(p.heads[1]).toMatchObject({ along: 90, down: -8, together: { along: 90, down: -8 } })
    note(p, [0, 0, 0, 210, -20, -60, 0], 3)
    expect(p.heads[0]).toMatchObject({ along: 310, down: 200, together: { along: 250, down: 200 } })
    expect(p.heads[1]).toMatchObject({ along: 110, down: 0, together: { along: 110, down: 0 } })
  })
})

/** A body that falls, tied to a node or a stanchion's head at rest. */
function fallingBody(change: { node?: number; x?: number; z?: number; u?: number; w?: number } = {}) {
  const tie = { node: change.node ?? -1, stanchion: 0, x: 0, z: 1.07 }
  const b = freshBody(worker(0, 0), tie, false)
  return Object.assign(b, {
    state: 'falling',
    x: 0.3,
    z: -0.5,
    u: 1,
    w: -2,
    from: 0.2,
    lowest: -0.6,
    ...change,
  })
}

/** Three elements between a head, two free nodes and a fixed node, moving. */
function small() {
  const m = bareMotion({
    at: (i) => [i * 0.101, 0.01 * i],
    elements: 3,
    rope: 0.3,
    EA: 2e5,
    massPerMetre: 0.4,
    fixed: [3],
  })
  // Cut at node 1, as where a connector is tied.
  const run = m.chain.runs[0]!
  const { nodes, mass, kind, pieces } = m.chain.mesh
  m.chain.runs = [
    { ...run, last: 1 },
    { ...run, first: 1 },
  ]
  pieces.splice(0, 1, { ...pieces[0]!, last: 1 }, { ...pieces[0]!, first: 1 })
  kind[0] = HEAD
  mass[0] = 2
  for (const [n, u, w] of [
    [0, 0.5, 0],
    [1, 3, -4],
    [2, -1, 2],
  ] as const)
    nodes.set([u, w], 4 * n + 2)
  m.heads = [{ node: 0, towards: 1, K: 3e5, pull: 600, x: -0.002, measured: -0.01, stanchion: 0 }]
  m.sums = new Float64Array(3 + 6)
  return m
}

describe('drag', () => {
  it('takes its part of all velocities and books the energy that went', () => {
    const m = small()
    const b = fallingBody({ u: 1.5 })
    const waits = { ...fallingBody(), state: 'standing' as const }
    m.bodies = [b, waits]
    const before = openBooks(m).last.kinetic
    slow(m, 0.5, 0.25)
    expect([...m.chain.mesh.nodes.slice(6, 8)]).toEqual([1.5, -2])
    expect([b.u, b.w, waits.u, waits.w]).toEqual([0.375, -0.5, 1, -2])
    expectClose(m.lost, before - openBooks(m).last.kinetic, { rel: 1e-12 })
    const rope = before - (100 * 6.25) / 2
    expectClose(m.lost, rope * (1 - 0.25) + 312.5 * (1 - 1 / 16), { rel: 1e-12 })
  })

  it('is felt by the rope within a swing of the bodies', () => expect(RESTING_DRAG).toBe(12))

  it('stops everything once the bodies slow down, then lets them gain again', () => {
    const m = small()
    const b = fallingBody()
    const waits = { ...fallingBody({ u: 50 }), state: 'standing' as const }
    m.bodies = [b, waits]
    const stop = stopAtFastest(m)
    const at = (u: number, w: number): boolean => {
      Object.assign(b, { u, w })
      waits.u -= 1
      stop()
      return b.u === 0 && b.w === 0
    }
    expect(at(1, 1)).toBe(false)
    expect(at(0, 2)).toBe(false)
    expect(at(2, 0)).toBe(false)
    expect(at(1.9, 0)).toBe(true)
    expect(m.chain.mesh.nodes[6]).toBe(0)
    expect(at(0.5, 0)).toBe(false)
    expect(at(0.6, 0)).toBe(false)
    expect(at(0, 0.5)).toBe(true)
  })

  it('is over when no body has moved or pulled unlike its weight for a tenth of a second', () => {
    const m = small()
    const b = fallingBody({ u: 0, w: 0 })
    const waits = { ...fallingBody(), state: 'standing' as const }
    m.bodies = [b, waits]
    const W = 100 * GRAVITY
    b.connector.force = W
    m.time = 5
    const still = restWatch(m)
    const at = (time: number, u: number, w: number, force: number): boolean => {
      m.time = time
      Object.assign(b, { u, w })
      b.connector.force = force
      return still()
    }
    expect(at(5.09, 0, 0, W)).toBe(false)
    expect(at(5.11, 1e-3, -1e-3, W * 1.004)).toBe(true)
    expect(at(5.12, 2.1e-3, 0, W)).toBe(false)
    expect(at(5.2, 0, 0, W * 0.996)).toBe(false)
    expect(at(5.23, 0, 0, W)).toBe(true)
    expect(at(5.24, 0, -2.1e-3, W)).toBe(false)
    expect(at(5.35, 0, 0, W)).toBe(true)
    expect(at(5.36, 0, 0, W * 0.99)).toBe(false)
    expect(at(5.47, 0, 0, W)).toBe(true)
    expect(at(5.48, 0, 0, W * 1.01)).toBe(false)
  })
})

describe('heads', () => {
  it('pull the rope back as at the start and by K for what they moved towards it', () => {
    for (const towards of [1, -1] as const) {
      const m = small()
      const h = { node: 0, towards, K: 3e5, pull: 600, x: 0.004, measured: 0, stanchion: 2 }
      m.chain.force[0] = 50
      m.chain.force[1] = -70
      m.chain.mesh.nodes[0] = 0.005
      pullHead(h, m)
      const pull = 600 + towards * 300
      expectClose(m.chain.force[0], 50 - towards * pull, { rel: 1e-9 })
      expect(m.chain.force[1]).toBe(-70)
      for (const [i, v] of [0, 0, 0, 0, 0, 0, 0, pull, 70].entries())
        expectClose(m.sums[i], v, { rel: 1e-9 }, `${i}`)
    }
  })

  it('that hold the rope get what both sides pull', () => {
    const m = small()
    m.chain.force.set([30, -40], 4)
    noteHeld({ node: 2, stanchion: 2 }, m)
    expect([...m.sums]).toEqual([0, 0, 0, 0, 0, 0, 0, 30, 40])
  })
})

describe('the books', () => {
  const W = 100 * GRAVITY
  const K = 2e5 / 0.1

  it('tell kinetic energy of rope, heads and whoever falls', () => {
    const m = small()
    const rope = 2 * 0.25 + 0.04 * 25 + 0.04 * 5
    expectClose(openBooks(m).last.kinetic, rope / 2, { rel: 1e-12 })
    m.bodies = [fallingBody(), { ...fallingBody({ u: 9 }), state: 'standing' }]
    expectClose(openBooks(m).last.kinetic, rope / 2 + 250, { rel: 1e-12 })
    expect(falling(m)).toBe(1)
    // The other end, where it moves along on its spring.
    m.chain.mesh.nodes[4 * 3 + 2] = 7
    m.chain.mesh.mass[3] = 3
    expectClose(openBooks(m).last.kinetic, rope / 2 + 250 + (3 * 49) / 2, { rel: 1e-12 })
  })

  it('tell the elastic energy of elements that are taut, of head springs and of connectors', () => {
    const m = small()
    const s = Math.hypot(0.101, 0.01) - 0.1
    const head = (600 + 3e5 * 0.002) ** 2 / (2 * 3e5)
    expectClose(openBooks(m).elasticAtStart, 3 * 0.5 * K * s * s + head, { rel: 1e-9 })
    m.chain.mesh.nodes.set([0.101, 0.01 * 0.5], 4)
    m.chain.mesh.nodes.set([0.2, 0.01], 8)
    const [s1, s2, s3] = [
      Math.hypot(0.101, 0.005) - 0.1,
      Math.hypot(0.099, 0.005) - 0.1,
      Math.hypot(0.103, 0.02) - 0.1,
    ] as const
    expect(s2).toBeLessThan(0)
    expectClose(openBooks(m).elasticAtStart, 0.5 * K * (s1 * s1 + s3 * s3) + head, { rel: 1e-9 }, 'slack one')
    const b = fallingBody({ x: 0.3, z: -0.5 })
    m.bodies = [b]
    const stretch = Math.hypot(0.3, 1.57) - 1.2
    const law = b.worker.connector
    const tearing = law.plateau * (stretch - law.plateau / law.stiffness)
    const pulls = law.plateau ** 2 / (2 * law.stiffness) + tearing
    const without = 0.5 * K * (s1 * s1 + s3 * s3) + head
    expectClose(openBooks(m).elasticAtStart, without + pulls, { rel: 1e-9 }, 'connector')
    m.bodies = [fallingBody({ node: 1, x: 0.101, z: -1.2 })]
    expectClose(
      openBooks(m).elasticAtStart,
      without + 0.5 * 60000 * 0.005 ** 2,
      { rel: 1e-9 },
      'tied to a node',
    )
    for (const change of [{ state: 'standing' as const }, { engaged: false }]) {
      m.bodies = [Object.assign(fallingBody(), change)]
      expectClose(openBooks(m).elasticAtStart, without, { rel: 1e-9 }, 'not yet')
    }
  })

  it('tell that of links: over a pulley, and shorter by what the absorber has given', () => {
    const m = small()
    m.heads = []
    m.chain.runs = []
    const pulley = freshPulley(0, 0.15, 0.05, 1, 0.1)
    const absorber = lineAbsorber({ onset: 9e3, full: 9.5e3, maxExtension: 1 }, 0.02)!
    absorber.extension = 0.021
    m.chain.links = [freshLink(2e5, 0.1, 1, pulley, null), freshLink(2e5, 0.1, 2, null, absorber)]
    const over = Math.hypot(0.049, 0.04) + Math.hypot(0.052, 0.03) - 0.1
    const series = Math.hypot(0.101, 0.01) - 0.1 - 0.001
    expectClose(openBooks(m).elasticAtStart, 0.5 * K * (over ** 2 + series ** 2), { rel: 1e-9 })
    absorber.extension = 0.03
    expectClose(openBooks(m).elasticAtStart, 0.5 * K * over ** 2, { rel: 1e-9 }, 'slack behind the absorber')
  })

  it('count height from the start, of free nodes and whoever falls, and all that does not come back', () => {
    const m = small()
    m.bodies = [fallingBody({ z: -0.5 }), { ...fallingBody({ z: 3 }), state: 'standing' }]
    const books = openBooks(m)
    const entry = (): ReturnType<typeof halfEntry> => halfEntry(m, books)
    expectClose(entry().potential, W * (-0.5 - 0.2), { rel: 1e-12 })
    const { nodes } = m.chain.mesh
    nodes[4 + 1]! += 0.3
    nodes[8 + 1]! -= 0.1
    nodes[1] = 9
    nodes[12 + 1] = 9
    expectClose(entry().potential, W * -0.7 + 0.04 * GRAVITY * 0.2, { rel: 1e-12 })
    expect(entry().dissipated).toBe(0)
    m.lost = 3
    m.bodies[0]!.connector.lost = 20
    m.bodies[1]!.connector.lost = 100
    expect(entry().dissipated).toBe(123)
    m.chain.absorber = { ...lineAbsorber({ onset: 1, full: 2, maxExtension: 1 }, 0)!, lost: 7 }
    expect(entry().dissipated).toBe(130)
    expectClose(entry().kinetic, openBooks(m).last.kinetic, { rel: 1e-12 })
    expectClose(entry().elastic, openBooks(m).elasticAtStart, { rel: 1e-12 })
  })

  it('close when all kinds add up to what was there and what bodies brought, kinetic energy half a step on both sides', () => {
    const m = small()
    const b = fallingBody()
    Object.assign(b, { brought: 40 })
    m.bodies = [b]
    const books = openBooks(m)
    const now = openBooks(m).last.kinetic
    expect(books.worstGap).toBe(0)
    const e = { kinetic: now + 8, potential: 5, elastic: books.elasticAtStart + 11, dissipated: 2 }
    closeEntry(m, books, e, 0)
    expect([books.worstGap, books.last === e]).toEqual([0, false])
    closeEntry(m, books, e, 1)
    expect(books.last).toBe(e)
    expectClose(e.kinetic, now + 4, { rel: 1e-12 })
    const gap = now + 4 + 5 + 11 + 2 - 40
    expectClose(books.worstGap, Math.abs(gap), { rel: 1e-9 })
    closeEntry(m, books, { ...e, kinetic: now, potential: 5 - gap + 4 - 1 }, 1)
    expectClose(books.worstGap, Math.abs(gap), { rel: 1e-9 }, 'the worst stays')
    closeEntry(m, books, { ...e, kinetic: now, potential: -1e4 }, 1)
    expectClose(books.worstGap, -(now - 1e4 + 11 + 2 - 40), { rel: 1e-9 }, 'below as well as above')
    // Over what bodies brought in and lost in height.
    books.worstGap = 3
    expectClose(energyError(m, books), 3 / (40 + W * 0.8), { rel: 1e-12 })
    m.bodies = [b, b]
    expectClose(energyError(m, books), 1.5 / (40 + W * 0.8), { rel: 1e-12 })
    m.bodies = []
    expect(energyError(m, books)).toBe(0)
  })
})
