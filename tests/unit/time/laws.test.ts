/** The laws of connector and line absorber by themselves, against their integrals. */
import { describe, expect, it } from 'vitest'
import { RUN_OUT_STIFFNESS } from '../../../src/solver/model'
import { connectorEnergy, freshConnector, pullConnector } from '../../../src/solver/time/connector'
import { absorb, type LineAbsorber, lineAbsorber, yieldForce } from '../../../src/solver/time/line-absorber'
import { expectClose } from '../../support/close'

/** Powers of two, so that every sum here is exact. */
const LAW = { stiffness: 65536, plateau: 4096, maxExtension: 0.5 }
const GIVES = LAW.plateau / LAW.stiffness

describe('a connector that has run out', () => {
  const told = (...distances: number[]): boolean => {
    const c = freshConnector(LAW, 1)
    for (const d of distances) pullConnector(c, d)
    return c.ranOut
  }

  it('says so only once it pulls with more than its plateau with nothing left to tear', () => {
    expect(freshConnector(LAW, 1).ranOut).toBe(false)
    expect(told(1 + GIVES / 2)).toBe(false)
    expect(told(1.25)).toBe(false)
    expect(told(1.5 + GIVES)).toBe(false)
    expect(told(1.5 + GIVES, 1.2)).toBe(false)
    expect(told(1.5 + 1.01 * GIVES)).toBe(true)
    expect(told(1.5 + 1.01 * GIVES, 1)).toBe(true)
  })

  it('and not where rounding leaves it a hair over its plateau while it tears', () => {
    const law = { stiffness: 50000, plateau: 3700, maxExtension: 1 }
    let over = 0
    for (let d = 1.3; d < 2; d += 0.0037) {
      const c = freshConnector(law, 1.2)
      if (pullConnector(c, d) > law.plateau) over++
      expect(c.ranOut, `${d}`).toBe(false)
    }
    expect(over).toBeGreaterThan(0)
  })

  it('has lost plateau times torn length, and no more', () => {
    const c = freshConnector(LAW, 1)
    for (const d of [1.1, 1.3, 1.2, 1.4, 1.9, 1, 2]) pullConnector(c, d)
    expect(c.torn).toBe(0.5)
    expectClose(c.lost, 4096 * 0.5, { rel: 1e-12 })
  })
})

describe('energy in a connector', () => {
  it('is the work of its force from slack to any length, what it tears included', () => {
    const c = freshConnector(LAW, 1)
    for (const end of [0.9, 1.03, 1.2, 1.5]) {
      const probe = freshConnector(LAW, 1)
      let work = 0
      const steps = 20000
      for (let i = 0; i < steps; i++) {
        const at = 0.9 + ((i + 0.5) * (end - 0.9)) / steps
        work += (pullConnector(probe, at) * (end - 0.9)) / steps
      }
      expectClose(connectorEnergy(c, end), work, { rel: 1e-4 }, `to ${end} m`)
    }
  })

  it('is what comes back once it has torn, along k and past the plateau when nothing is left', () => {
    const c = freshConnector(LAW, 1)
    pullConnector(c, 1.25)
    expectClose(connectorEnergy(c, 1.25), LAW.plateau ** 2 / (2 * LAW.stiffness), { rel: 1e-12 })
    expectClose(connectorEnergy(c, 1.2), (LAW.stiffness * (0.2 - c.torn) ** 2) / 2, { rel: 1e-12 })
    expect(connectorEnergy(c, 1.15)).toBe(0)
    pullConnector(c, 2)
    expectClose(connectorEnergy(c, 2), (LAW.stiffness * 0.5 ** 2) / 2, { rel: 1e-12 })
  })
})

describe('the line absorber', () => {
  const LINE = { onset: 5000, full: 6200, maxExtension: 0.4 }
  const made = (extension: number): LineAbsorber => lineAbsorber(LINE, extension)!
  const yields = (e: number): number =>
    e < 0.4 ? 5000 + (1200 * e) / 0.4 : 6200 + RUN_OUT_STIFFNESS * (e - 0.4)
  /** Its work between two extensions, trapezes of the two straight pieces. */
  const work = (from: number, to: number): number => {
    const piece = (a: number, b: number): number => (b <= a ? 0 : ((yields(a) + yields(b)) / 2) * (b - a))
    return piece(from, Math.min(to, 0.4)) + piece(Math.max(from, 0.4), to)
  }

  it('is none where the line has none, and starts where the unloaded line has brought it', () => {
    expect(lineAbsorber(null, 0.1)).toBeNull()
    expect(made(0.1)).toEqual({ ...LINE, extension: 0.1, initial: 0.1, lost: 0 })
  })

  it('yields at its onset, climbs to full, and is stiff past its end', () => {
    for (const e of [0, 0.1, 0.3999, 0.4, 0.41])
      expectClose(yieldForce(made(e)), yields(e), { rel: 1e-12 }, `${e}`)
  })

  it('does not move under less than it yields at', () => {
    const a = made(0.1)
    expect(absorb(a, yields(0.1), 1e6)).toBe(yields(0.1))
    expect(absorb(a, 1000, 1e6)).toBe(1000)
    expect(a).toEqual(made(0.1))
  })

  it.each([
    ['within its length', 0.1, 7000, 3e5],
    ['from nothing', 0, 9000, 2e6],
    ['over its end', 0.39, 30000, 3e5],
    ['to just short of its end', 0.3, 6200 + 3e5 * 0.0999, 3e5],
    ['past its end', 0.45, 900000, 1e6],
  ])('gives until what is left is what it yields at: %s', (_, from, tension, give) => {
    const a = made(from)
    const left = absorb(a, tension, give)
    expect(a.extension).toBeGreaterThan(from)
    expectClose(left, yields(a.extension), { rel: 1e-9 }, 'tension left')
    expectClose(left, tension - give * (a.extension - from), { rel: 1e-9 }, 'tension taken')
    expectClose(a.lost, work(from, a.extension), { rel: 1e-9 }, 'work')
    expect(a.initial).toBe(from)
  })

  it('stops at its end where no more than its full force is left there', () => {
    const a = made(0.3)
    expectClose(absorb(a, 6200 + 3e5 * 0.1, 3e5), 6200, { rel: 1e-9 })
    expectClose(a.extension, 0.4, { abs: 1e-9 })
  })
})
