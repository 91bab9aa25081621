import { describe, expect, it } from 'vitest'
import { solveLoadedChain } from '../../../src/solver/loaded'
import { ELEMENTS, hasCalculix, type RopeSpan, solveSpan } from '../../support/calculix'
import { prove } from '../../support/proof'
import { seeded } from '../../support/random'

const SEED = 20261125
const SPANS = 24

/** Seeded spans as lifelines have them: 6 to 20 m, level or sloping, loaded anywhere, taut or slack. */
function spans(): RopeSpan[] {
  const r = seeded(SEED)
  return Array.from({ length: SPANS }, (_, i) => {
    const X = r.between(6, 20)
    const Z = i % 3 === 0 ? 0 : r.between(-0.08, 0.08) * X
    const chord = Math.hypot(X, Z)
    const EA = r.between(2e6, 4.5e6)
    const tight = r.between(800, 9000)
    return {
      X,
      Z,
      EA,
      w: r.between(2, 6),
      rope: chord / (1 + tight / EA),
      P: i % 4 === 0 ? 0 : r.between(1000, 9000),
      share: i % 2 === 0 ? 0.5 : Math.round(r.between(0.15, 0.85) * ELEMENTS) / ELEMENTS,
    }
  })
}

describe.skipIf(!hasCalculix())(`statics against CalculiX, ${SPANS} spans, seed ${SEED}`, () => {
  it.each(spans().map((s, i) => [i, s] as const))('span %i', (i, s) => {
    const fe = solveSpan(s)
    const chain = {
      X: [s.X],
      Z: [s.Z],
      EA: s.EA,
      w: s.w,
      give: [0, 0] as [number, number],
      heldAt: [0, 0] as [number, number],
      absorber: null,
      absorberAt: 'end' as const,
      rope: s.rope,
    }
    const ours = solveLoadedChain(chain, 0, fe.x, s.P, { H: 8000, others: [] })
    expect(ours).not.toBeNull()
    const source = `CalculiX, ${ELEMENTS} T3D2 elements, large displacements`
    const name = `span ${i}: ${s.X.toFixed(1)} m, rise ${s.Z.toFixed(2)} m, ${s.P.toFixed(0)} N`
    // 0.5 %: the Green-strain law of its elements alone makes 0.2 to 0.4 %.
    prove({
      what: `${name}: tension at the first end`,
      source,
      expected: fe.first,
      got: ours!.at.first.Ta,
      unit: 'N',
      rel: 0.005,
    })
    prove({
      what: `${name}: tension at the last end`,
      source,
      expected: fe.last,
      got: ours!.at.second.Tb,
      unit: 'N',
      rel: 0.005,
    })
    const chordThere = (s.Z * fe.x) / s.X
    prove({
      what: `${name}: sag`,
      source,
      expected: chordThere - fe.z,
      got: chordThere - ours!.height,
      unit: 'm',
      rel: 0.005,
      abs: 5e-5,
    })
  })
})

if (!hasCalculix())
  console.warn('CalculiX (ccx) is not installed: the comparison of statics with it was skipped')
