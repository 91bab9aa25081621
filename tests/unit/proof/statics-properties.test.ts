import { describe, expect, it } from 'vitest'
import { type Faller, fallOnLine, freeFall } from '../../../src/solver/fall-energy'
import { headPulls, loadedPulls, type SpanDirection, unloadedPulls } from '../../../src/solver/heads'
import { installedLine, type UnloadedLine, unloadedLine } from '../../../src/solver/installed'
import { lineLaw } from '../../../src/solver/line-law'
import type { LineModel } from '../../../src/solver/model'
import { expectClose, solvedValue } from '../../support/close'
import { seeded } from '../../support/random'

const SEED = 77
const CASES = 12

/** Seeded lines of one to five spans, as bridges have them. */
function lines(): LineModel[] {
  const r = seeded(SEED)
  return Array.from({ length: CASES }, () => {
    const spans = r.whole(1, 5)
    const x = [0]
    const z = [r.between(10, 12)]
    for (let i = 0; i < spans; i++) {
      const run = r.between(5, 14)
      x.push(x[i]! + run)
      z.push(z[i]! + r.between(-0.04, 0.04) * run)
    }
    const low = r.between(2e6, 3e6)
    const onset = r.between(6500, 9000)
    return {
      x,
      z,
      massPerMetre: r.between(0.2, 0.5),
      thermalExpansion: 1.2e-5,
      axialStiffness: { low, high: low * r.between(1.1, 1.5) },
      absorber:
        r.next() < 0.6
          ? {
              onset: { low: onset, high: onset * 1.15 },
              full: { low: onset * 1.3, high: onset * 1.5 },
              maxExtension: 1,
            }
          : null,
      absorberAt: r.next() < 0.5 ? 'start' : 'end',
      pretension: r.between(2500, 5500),
      pretensionTolerance: 0.1,
      installTemperature: 15,
      serviceTemperature: { low: -10, high: 35 },
      endStiffness: [r.between(1e5, 4e5), r.between(1e5, 4e5)],
      endMass: [5, 5],
    }
  })
}

const FALLER: Omit<Faller, 'freeFall'> = {
  mass: 110,
  count: 1,
  connector: { stiffness: 60000, plateau: 4000, maxExtension: 1.4 },
}

function line(m: LineModel, set: 'soft' | 'stiff' = 'soft'): UnloadedLine {
  return solvedValue(unloadedLine(m, solvedValue(installedLine(m, set)), 'sliding'))
}

function midFall(m: LineModel, span: number, set: 'soft' | 'stiff' = 'soft') {
  const unloaded = line(m, set)
  const law = solvedValue(lineLaw(unloaded, span, (m.x[span + 1]! - m.x[span]!) / 2, 8000))
  const fall = solvedValue(fallOnLine({ ...FALLER, freeFall: freeFall('lanyard', 1.5, 1.5, 1.07) }, law))
  return { unloaded, law, fall }
}

const longest = (m: LineModel): number =>
  m.x.slice(1).reduce((best, v, i) => (v - m.x[i]! > m.x[best + 1]! - m.x[best]! ? i : best), 0)

const mirrored = (m: LineModel): LineModel => {
  const end = m.x[m.x.length - 1]!
  return {
    ...m,
    x: [...m.x].reverse().map((v) => end - v),
    z: [...m.z].reverse(),
    absorberAt: m.absorberAt === 'start' ? 'end' : 'start',
    endStiffness: [m.endStiffness[1], m.endStiffness[0]],
  }
}

describe(`properties of the statics, ${CASES} seeded lines, seed ${SEED}`, () => {
  it.each(lines().map((m, i) => [i, m] as const))('line %i', (_, m) => {
    const span = longest(m)
    const base = midFall(m, span)
    const T = base.fall.tension!

    // More pretension never means more sag: neither installed nor under the fall's own load.
    const tight = { ...m, pretension: m.pretension * 1.2 }
    const P = FALLER.count * base.fall.arrestForce
    const sagAt = (of: LineModel): number => {
      const u = line(of)
      const law = solvedValue(lineLaw(u, span, (m.x[span + 1]! - m.x[span]!) / 2, 8000))
      return -law.solve(P)!.height
    }
    expect(sagAt(tight)).toBeLessThanOrEqual(sagAt(m) + 1e-9)

    // More EA never means less tension.
    const stiffer = {
      ...m,
      axialStiffness: { low: m.axialStiffness.low * 1.3, high: m.axialStiffness.high * 1.3 },
    }
    expect(midFall(stiffer, span).fall.tension!).toBeGreaterThanOrEqual(T * (1 - 1e-9))

    // A mirror image gives mirror results.
    const other = midFall(mirrored(m), m.x.length - 2 - span)
    expectClose(other.fall.tension, T, { rel: 1e-7 })
    expectClose(other.fall.drop, base.fall.drop, { rel: 1e-6 })

    // Scaling units changes nothing: lengths by 2, forces by 4 (so energies by 8), masses by 4 at the same g.
    const scaled: LineModel = {
      ...m,
      x: m.x.map((v) => 2 * v),
      z: m.z.map((v) => 2 * v),
      massPerMetre: 2 * m.massPerMetre,
      axialStiffness: { low: 4 * m.axialStiffness.low, high: 4 * m.axialStiffness.high },
      absorber: m.absorber && {
        onset: { low: 4 * m.absorber.onset.low, high: 4 * m.absorber.onset.high },
        full: { low: 4 * m.absorber.full.low, high: 4 * m.absorber.full.high },
        maxExtension: 2 * m.absorber.maxExtension,
      },
      pretension: 4 * m.pretension,
      endStiffness: [2 * m.endStiffness[0], 2 * m.endStiffness[1]],
    }
    const big = line(scaled)
    const law = solvedValue(lineLaw(big, span, m.x[span + 1]! - m.x[span]!, 32000))
    const k = { stiffness: 120000, plateau: 16000, maxExtension: 2.8 }
    const fall = solvedValue(
      fallOnLine(
        { mass: 440, count: 1, connector: k, freeFall: 2 * freeFall('lanyard', 1.5, 1.5, 1.07) },
        law,
      ),
    )
    expectClose(fall.tension, 4 * T, { rel: 1e-7 })
    expectClose(fall.drop, 2 * base.fall.drop, { rel: 1e-6 })

    // Work put in equals what the fall gives: m g (h + d + e) = U + F^2/2k + Fp x.
    const f = base.fall
    const given = 110 * 9.80665 * (freeFall('lanyard', 1.5, 1.5, 1.07) + f.drop + f.extension)
    const taken = f.work + f.arrestForce ** 2 / 120000 + 4000 * f.torn
    expectClose(taken, given, { rel: 1e-5 })
  })

  it('balances every head: the rope’s pulls sum to its weight and the load', () => {
    for (const m of lines()) {
      const span = longest(m)
      const { unloaded, fall } = midFall(m, span)
      const straight: SpanDirection[] = m.x.slice(1).map(() => [1, 0])
      const heads = headPulls(loadedPulls(unloaded, span, fall.state!), straight)
      const w = unloaded.set.weight
      const s = fall.state!
      const rope = s.at.L1 + s.at.L2 + s.others.reduce((sum, o) => sum + (o?.L ?? 0), 0)
      expectClose(
        heads.reduce((sum, h) => sum + h.down, 0),
        w * rope + s.P,
        { rel: 1e-9 },
      )
      expectClose(
        heads.reduce((sum, h) => sum + h.along, 0),
        0,
        { abs: 1e-6 },
      )
      const bare = headPulls(unloadedPulls(unloaded), straight)
      const all = unloaded.spans.reduce((sum, o) => sum + o.L, 0)
      expectClose(
        bare.reduce((sum, h) => sum + h.down, 0),
        w * all,
        { rel: 1e-9 },
      )
    }
  })

  it('never deepens the longest span by a further stanchion in its middle (soft, sliding)', () => {
    for (const m of lines()) {
      const span = longest(m)
      const before = midFall(m, span).fall
      const at = (m.x[span]! + m.x[span + 1]!) / 2
      const up = (m.z[span]! + m.z[span + 1]!) / 2
      const more = { ...m, x: [...m.x], z: [...m.z] }
      more.x.splice(span + 1, 0, at)
      more.z.splice(span + 1, 0, up)
      const after = midFall(more, span).fall
      expect(after.drop + after.extension).toBeLessThanOrEqual(before.drop + before.extension + 1e-9)
    }
  })
})
