/** What a run tells: pictures, figures, the end of the first swing, rest. */
import { describe, expect, it } from 'vitest'
import { freshBody } from '../../../src/solver/time/body'
import { fallByParts, fallInTime } from '../../../src/solver/time/fall'
import { figures, wholeRun } from '../../../src/solver/time/figures'
import { HistoryTaker } from '../../../src/solver/time/history'
import { openRun, runBlock } from '../../../src/solver/time/run'
import { expectClose } from '../../support/close'
import { FIRM_ABSORBER, fall, fallInput, lineModel, worker } from './support'

const model = lineModel([5, 4], { absorber: FIRM_ABSORBER, endStiffness: [2e5, 4e5] })
const W = worker(0, 2.5)
const at = (i: number): string => `${i}`

describe('pictures', () => {
  const input = fallInput(model, [W, worker(1, 7, { delay: 0.1 })])
  const run = openRun(input, { history: true })
  const { motion, means } = run
  for (let i = 0; i < 40; i++) runBlock(run, 0)

  it('hold nodes, tensions, bodies, heads, absorber and energy as they were, however many are taken', () => {
    const taker = new HistoryTaker(motion)
    motion.chain.absorber!.extension = 0.07
    motion.bodies[1]!.connector.force = 0
    const energies = { kinetic: 1, potential: -2, elastic: 3, dissipated: 4 }
    for (let f = 0; f < 600; f++) {
      motion.time = f / 10
      motion.bodies[1]!.x = 7 + f
      motion.chain.mesh.nodes[4 * 3 + 1] = f
      taker.take(means, { ...energies, kinetic: f })
    }
    const h = taker.finish()
    const { count, nodes } = motion.chain.mesh
    expect([h.frames, h.nodes, h.workers]).toEqual([600, count, 2])
    expect([...h.attachedNode]).toEqual(motion.chain.mesh.ties.map((t) => t.node))
    const near = (got: number | undefined, want: number, what: string): void =>
      expectClose(got, want, { rel: 1e-6, abs: 1e-6 }, what)
    for (const f of [0, 1, 255, 256, 257, 511, 512, 599]) {
      expect([h.times[f], h.energies[4 * f]]).toEqual([f / 10, f])
      expect([...h.energies.slice(4 * f + 1, 4 * f + 4)]).toEqual([-2, 3, 4])
      for (let i = 0; i < count; i++) {
        near(h.x[f * count + i], nodes[4 * i]!, `x ${i}`)
        near(h.z[f * count + i], i === 3 ? f : nodes[4 * i + 1]!, `z ${i}`)
      }
      for (let e = 0; e < count - 1; e++) near(h.tension[f * (count - 1) + e], means.mean[e]!, `tension ${e}`)
      for (const [i, b] of motion.bodies.entries()) {
        near(h.workerX[2 * f + i], i === 1 ? 7 + f : b.x, 'x of a body')
        near(h.workerZ[2 * f + i], b.z, 'z of a body')
        near(h.connectorForce[2 * f + i], b.connector.force, 'force')
        near(h.connectorExtension[2 * f + i], b.connector.extension, 'extension')
      }
      near(h.headShift[2 * f], nodes[0]! - model.x[0]!, 'first head')
      near(h.headShift[2 * f + 1], model.x[2]! - nodes[4 * (count - 1)]!, 'last head')
      near(h.absorberExtension[f], 0.07, 'absorber')
    }
    expect(h.headShift[0]).not.toBe(0)
    expect(h.connectorForce[0]).toBeGreaterThan(0)
  })

  it('show in spans that stay the tension that they hang with', () => {
    const held = fallInput(model, [worker(1, 7)], 'soft', 'held')
    const other = openRun(held, {})
    const taker = new HistoryTaker(other.motion)
    taker.take(other.means, other.books.last)
    const h = taker.finish()
    const { mesh } = other.motion.chain
    const s = held.line.spans[0]!
    const first = mesh.headNode[1]!
    expect(first).toBeGreaterThan(6)
    for (let e = 0; e < first; e++) {
      // A straight element lacks of its arc (w l / H)^2 / 24 of its length, times EA of tension.
      const most = Math.hypot(s.H, Math.max(Math.abs(s.V), Math.abs(held.set.weight * s.L - s.V)))
      const lacks = (held.set.stiffness * ((held.set.weight * mesh.rest[e]!) / s.H) ** 2) / 24
      expect(h.tension[e]).toBeGreaterThan(s.H - lacks - 1)
      expect(h.tension[e]).toBeLessThan(most + 1)
    }
    for (let e = first; e < mesh.count - 1; e++)
      expectClose(h.tension[e], other.means.mean[e]!, { rel: 1e-6 }, at(e))
    expectClose(h.absorberExtension[0], held.line.absorberExtension, { abs: 1e-7 })
  })

  it('are taken every 8 ms, or as often as asked, in whole milliseconds', () => {
    for (const [frame, apart] of [
      [undefined, 0.008],
      [0.002, 0.002],
      [0.0034, 0.003],
      [1e-5, 0.001],
    ] as const) {
      const r = openRun(input, { history: true, ...(frame === undefined ? {} : { frame }) })
      while (r.motion.time < 0.0165) runBlock(r, 0)
      const { times, frames } = r.history!.finish()
      expect(times[0]).toBeLessThan(1e-4)
      for (let f = 1; f < frames; f++) expectClose(times[f], f * apart, { abs: 1e-9 }, `${frame}, ${f}`)
      expect(frames).toBe(1 + Math.floor(0.0165 / apart + 1e-6))
    }
  })
})

it('an entry stands in the books for every millisecond, of one instant', () => {
  const r = openRun(fallInput(model, [worker(0, 4.99)], 'soft', 'held'), {})
  const entries = new Set([r.books.last])
  const mass = 100
  for (let i = 0; i < 40; i++) {
    const { u, w } = r.motion.bodies[0]!
    const before = r.blocks % 4 === 0
    runBlock(r, 0)
    entries.add(r.books.last)
    // Half a step of falling freely is all that the entry's speed is ahead of the last one.
    if (before && r.motion.bodies[0]!.connector.force === 0)
      expectClose(r.books.last.kinetic, (mass * (u * u + w * w)) / 2, { rel: 1e-3 }, `${i}`)
  }
  expect(entries.size).toBe(11)
  expect(r.books.worstGap).toBeGreaterThan(0)
})

describe('figures', () => {
  const run = openRun(fallInput(model, [W, W]), {})
  const { motion } = run
  const law = { length: 1.2 }
  const one = Object.assign(freshBody(W, { node: -1, stanchion: 1, x: 5, z: 1.07 }, false), {
    standing: 1.4,
    lowest: -2,
    lowestAt: 0.7,
    ropeLowest: 0.4,
    arrestForce: 4100,
    extension: 0.6,
    freeFall: 1.63,
    pulledOff: true,
  })
  Object.assign(one.connector, { torn: 0.55, ranOut: true, ...law })
  motion.bodies = [one, { ...one, freeFall: null, tie: { ...one.tie, node: 4 }, pulledOff: false }]
  motion.time = 1.5
  motion.steps = 777
  run.peaks.tension = 5e3
  Object.assign(run.peaks, { time: 0.3, element: 9 })

  it('count from where the body stood to its lowest point, harness and margin included', () => {
    const [first, second] = figures(run).workers
    expect(first).toEqual({
      freeFall: 1.63,
      arrestForce: 4100,
      connectorExtension: 0.6,
      connectorTorn: 0.55,
      connectorRanOut: true,
      lineDrop: one.lineZ - 0.4,
      totalFall: 1.4 + 2 + 0.3,
      clearance: 1.4 + 2 + 0.3 + 0.61,
      lowest: -2,
      lowestAt: 0.7,
      atStanchion: true,
      pulledOff: true,
    })
    expectClose(second!.freeFall, 3.4, { abs: 1e-12 }, 'never taut: all of it')
    expect([second!.atStanchion, second!.pulledOff]).toEqual([false, false])
  })

  it('tell tension, heads, absorber and when they were taken', () => {
    const got = figures(run)
    expect([got.tension, got.tensionAt]).toEqual([5e3, { time: 0.3, element: 9 }])
    expect(got.closedAt).toBe(1.5)
    expect(got.energies).toEqual(run.books.last)
    expect(got.heads).toEqual(run.peaks.heads.map(({ along, down, together }) => ({ along, down, together })))
    const absorber = motion.chain.absorber!
    for (const [extension, out] of [
      [0.2, false],
      [1.07, false],
      [1.08, true],
    ] as const) {
      absorber.extension = extension
      expect([figures(run).absorberExtension, figures(run).absorberRanOut]).toEqual([extension, out])
      expect(wholeRun(run).whole.absorberExtension).toBe(extension)
    }
    motion.chain.absorber = null
    motion.chain.absorberAtRest = 0.03
    expect([figures(run).absorberExtension, figures(run).absorberRanOut]).toEqual([0.03, false])
    const whole = wholeRun(run)
    expect(whole.whole).toEqual({ tension: 5e3, absorberExtension: 0.03, workers: figures(run).workers })
    expect([whole.steps, whole.time, whole.history]).toEqual([777, 1.5, null])
  })
})

describe('the end of the first swing', () => {
  const alone = fallInput(model, [worker(0, 4.99)], 'soft', 'held')

  it('is a fifth of the way to the lowest point past it, 60 ms at least, within a quarter of a millisecond', () => {
    const quick = fall(alone)
    expectClose(quick.closedAt - quick.workers[0]!.lowestAt, 0.06, { abs: 5e-4 })
    const soft = { stiffness: 900, plateau: 1e5, maxExtension: 1 }
    const slow = fall(fallInput(model, [worker(0, 4.99, { connector: soft })], 'soft', 'held'))
    const { lowestAt } = slow.workers[0]!
    expect(lowestAt).toBeGreaterThan(0.4)
    expectClose(slow.closedAt - lowestAt, lowestAt / 5, { abs: 5e-4 })
  })

  it('waits for whoever falls late, and counts in turn from when the turn began', () => {
    const late = fall({ ...alone, workers: [W, worker(0, 4.99, { delay: 0.9 })] })
    expect(late.workers[1]!.lowestAt).toBeGreaterThan(0.9)
    expectClose(late.closedAt - late.workers[1]!.lowestAt, late.workers[1]!.lowestAt / 5, { abs: 5e-4 })
    const turns = fall({ ...alone, workers: [worker(0, 4.99), worker(0, 4.99)], order: 'in-turn' })
    const [a, b] = turns.workers
    // The same arrest twice, with nothing that gives between them.
    expectClose(b!.arrestForce, a!.arrestForce, { rel: 1e-3 })
    expectClose(b!.lowest, a!.lowest, { abs: 1e-3 })
    expect(b!.lowestAt).toBeGreaterThan(turns.closedAt - 0.1)
    expectClose(turns.closedAt - b!.lowestAt, 0.06, { abs: 5e-4 })
  })

  it('goes on as long as asked past the lowest point, with pictures three seconds', () => {
    const low = fall(alone).workers[0]!.lowestAt
    expectClose(fall(alone, { after: 0.5 }).time, low + 0.5, { abs: 5e-4 })
    const short = fall(alone)
    expectClose(short.time, short.closedAt, { abs: 1e-12 })
    expectClose(fall(alone, { history: true }).time, low + 3, { abs: 5e-4 })
    expectClose(fall(alone, { history: true, after: 0.2 }).time, low + 0.2, { abs: 5e-4 })
  })

  it('is damped by as much as asked: a body alone on a spring swings as its equation says', () => {
    // m x'' + c m x' = m g - k x, from x = 0 at v0: the lowest point of a damped spring.
    const spring = { stiffness: 3000, plateau: 1e6, maxExtension: 1 }
    const input = fallInput(model, [worker(0, 4.99, { connector: spring })], 'soft', 'held')
    for (const drag of [0, 4]) {
      const got = fall(input, { drag })
      const g = 9.80665
      const [w2, n] = [3000 / 100, drag / 2]
      const wd = Math.sqrt(w2 - n * n)
      const v0 = Math.sqrt(2 * g * got.workers[0]!.freeFall)
      const rest = g / w2
      // x = rest + e^(-n t) (-rest cos + b sin), b = (v0 - n rest)/wd.
      const b = (v0 - n * rest) / wd
      let most = 0
      for (let t = 0; t < 2; t += 1e-4)
        most = Math.max(most, rest + Math.exp(-n * t) * (b * Math.sin(wd * t) - rest * Math.cos(wd * t)))
      expectClose(got.workers[0]!.connectorExtension, most, { rel: 1e-3 }, `drag ${drag}`)
    }
  })
})

describe('parts', () => {
  it('tell the share of the way, and stop where told to', () => {
    const input = fallInput(model, [W])
    const told = (options: object): number[] => {
      const shares: number[] = []
      const parts = fallByParts(input, options)
      for (let next = parts.next(); !next.done; next = parts.next()) shares.push(next.value)
      return shares
    }
    const plain = told({})
    // Every 25 ms of motion: that part of 0.6 s; the first quarter of a millisecond belongs to the start.
    for (const [i, share] of plain.entries())
      expectClose(share, ((i + 1) * 0.025 - 2.5e-4) / 0.6, { abs: 1e-9 })
    expect(plain.length).toBeGreaterThan(5)
    const pictures = told({ history: true })
    expectClose(pictures[0], 0.15 * plain[0]!, { rel: 1e-9 })
    const last = pictures[pictures.length - 1]!
    expect(last).toBeGreaterThan(0.97)
    expect(Math.max(...pictures)).toBeLessThanOrEqual(0.99)
    for (const [i, share] of pictures.entries())
      if (i > 0) expect(share).toBeGreaterThan(pictures[i - 1]! - 1e-12)
  })

  it('tell a run that ran away rather than its numbers', () => {
    const got = fallInTime(fallInput(model, [worker(0, 2.5, { mass: Number.MIN_VALUE })]))
    expect(got.ok ? '' : got.why).toMatch(/ran away/)
  })

  it('tell a body that finds no lowest point within half a minute', () => {
    const got = fallInTime(fallInput(model, [worker(0, 4.99, { delay: 60 })], 'soft', 'held'))
    expect(got.ok ? '' : got.why).toMatch(/no lowest point within 30 s/)
  })
})
