/**
 * Spans made from the plain textbook form (tests/support/rope.ts) and found again. A wrong derivative or a poor first
 * guess still leads there, only slowly, so the rounds are counted too: Newton's method takes a handful.
 */
import { describe, expect, it, vi } from 'vitest'
import { expectClose } from '../../tests/support/close'
import { seeded } from '../../tests/support/random'
import { plainSegment } from '../../tests/support/rope'
import { segmentTangent } from './catenary'
import { freeSpanAtTension, type LoadedTarget, loadedSpan, type SpanTarget } from './span'

vi.mock('./catenary', async (load) => {
  const real = await load<typeof import('./catenary')>()
  return { ...real, segmentTangent: vi.fn(real.segmentTangent) }
})

const SEED = 20261125
const random = seeded(SEED)

/** What `solve` gives and how many segments it took. */
function counted<T>(solve: () => T): { found: T; segments: number } {
  vi.mocked(segmentTangent).mockClear()
  const found = solve()
  return { found, segments: vi.mocked(segmentTangent).mock.calls.length }
}

/** A rope of usual figures, taut to slack: EA in N, w in N/m, H in N. */
const rope = () => ({
  EA: 10 ** random.between(5, 7),
  w: random.between(0.5, 12),
  H: 10 ** random.between(2, 4.3),
})

describe('a span without a load', () => {
  const made = Array.from({ length: 300 }, () => {
    const { EA, w, H } = rope()
    const V = H * random.between(-2.5, 2.5)
    const L = random.between(1, 25)
    const [give, held] = [random.between(0, 2e-5), random.between(0, 1e4)]
    const at = plainSegment(H, V, L, EA, w)
    const target: SpanTarget = { X: at.dx + give * (H - held), Z: at.dz, EA, w, give, giveAt: give * held }
    return { target, H, V, L, ...at }
  })

  it(`is found from its tension at the first end, seed ${SEED}`, () => {
    let most = 0
    let all = 0
    for (const m of made) {
      const { found, segments } = counted(() => freeSpanAtTension(m.target, m.Ta))
      expect(found, JSON.stringify(m)).not.toBeNull()
      expectClose(found!.L, m.L, { rel: 1e-9 }, 'L')
      expectClose(found!.V, m.V, { abs: 1e-9 * m.Ta }, 'V')
      expectClose(found!.H, m.H, { rel: 1e-8 }, 'H')
      expectClose(found!.Tb, m.Tb, { rel: 1e-9 }, 'Tb')
      most = Math.max(most, segments)
      all += segments
    }
    // A segment for each round and one for the result.
    expect(most).toBeLessThanOrEqual(8)
    expect(all / made.length).toBeLessThan(5.3)
  })
})

describe('a span with a load', () => {
  const made = Array.from({ length: 300 }, () => {
    const { EA, w, H } = rope()
    const P = H * random.between(0, 2)
    const V = P * random.between(0, 1) + H * random.between(-0.4, 0.4)
    const [L1, L2] = [random.between(0.5, 12), random.between(0.5, 12)]
    const give: [number, number] = [random.between(0, 2e-5), random.between(0, 2e-5)]
    const held = random.between(0, 1e4)
    const giveAt: [number, number] = [give[0] * held, give[1] * held]
    const a = plainSegment(H, V, L1, EA, w)
    const b = plainSegment(H, a.E - P, L2, EA, w)
    const [X1, X2] = [a.dx + give[0] * H - giveAt[0], b.dx + give[1] * H - giveAt[1]]
    const target: LoadedTarget = { X1, X2, Z: a.dz + b.dz, EA, w, give, giveAt }
    return { target, P, H, V, L1, L2 }
  })

  it(`is found from its horizontal force, seed ${SEED}`, () => {
    let most = 0
    let all = 0
    for (const m of made) {
      const { found, segments } = counted(() => loadedSpan(m.target, m.H, m.P))
      expect(found, JSON.stringify(m)).not.toBeNull()
      expectClose(found!.L1, m.L1, { rel: 1e-9 }, 'L1')
      expectClose(found!.L2, m.L2, { rel: 1e-9 }, 'L2')
      expectClose(found!.V, m.V, { abs: 1e-9 * (m.H + m.P) }, 'V')
      most = Math.max(most, segments)
      all += segments
    }
    // Two segments for each round and two for the result.
    expect(most).toBeLessThanOrEqual(12)
    expect(all / made.length).toBeLessThan(10.1)
  })
})
