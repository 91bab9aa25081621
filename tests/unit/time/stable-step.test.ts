/** How long a step may be, against the fastest swing that the chain can have. */
import { describe, expect, it } from 'vitest'
import { buildMesh, FIXED, HEAD, type Mesh } from '../../../src/solver/time/mesh'
import { startMotion } from '../../../src/solver/time/motion'
import { stableStep } from '../../../src/solver/time/stable-step'
import { ROPE_DAMPING, type TimeFallInput, type TimeWorker } from '../../../src/solver/time/types'
import { expectClose } from '../../support/close'
import { fallInput, lineModel, unlikeLine, W1, W3, worker } from './support'

describe('the longest stable step', () => {
  /** The greatest eigenfrequency of the chain with its connectors and heads on their springs, by power iteration. */
  function fastest(input: TimeFallInput, mesh: Mesh): number {
    const n = mesh.count + input.workers.length
    const bodies = input.workers.map((w, i) => [mesh.ties[i]!.node, w] as const)
    const springs: [number, number, number][] = []
    for (const p of mesh.pieces)
      for (let e = p.first; e < p.last; e++) springs.push([e, e + 1, input.set.stiffness / mesh.rest[e]!])
    for (const [i, [node, w]] of bodies.entries()) springs.push([node, mesh.count + i, w.connector.stiffness])
    const mass = [...mesh.mass, ...input.workers.map((w) => w.mass)]
    const fixed = (i: number): boolean => i < 0 || mesh.kind[i] === FIXED
    let v = Array.from({ length: n }, (_, i) => Math.sin(i * 12.9898) + (i % 2))
    let most = 0
    for (let round = 0; round < 150; round++) {
      const f = v.map((x, i) => (mesh.kind[i] === HEAD ? input.model.endStiffness[i === 0 ? 0 : 1] * x : 0))
      for (const [a, b, k] of springs) {
        const pull = k * ((fixed(b) ? 0 : v[b]!) - (fixed(a) ? 0 : v[a]!))
        if (!fixed(a)) f[a]! -= pull
        if (!fixed(b)) f[b]! += pull
      }
      const next = f.map((x, i) => x / mass[i]!)
      most = Math.max(...next.map(Math.abs))
      v = next.map((x) => x / most)
    }
    return Math.sqrt(most)
  }

  const stiff = (k: number, mass = 100): Partial<TimeWorker> => ({
    mass,
    connector: { stiffness: k, plateau: 4000, maxExtension: 1 },
  })
  const lines: [string, TimeFallInput][] = [
    ['the rope decides', unlikeLine([W1, W3], 'sliding')],
    ['a stiff connector on a node decides', unlikeLine([worker(1, 11, stiff(3e8)), W3], 'sliding')],
    ['a light body decides', unlikeLine([worker(1, 11, stiff(5e7, 0.3)), W3], 'held')],
    [
      'a stiff end decides',
      fallInput(lineModel([8, 8], { endStiffness: [3e5, 9e9], endMass: [4.75, 0.5] }), [worker(0, 4)]),
    ],
    [
      'the other stiff end decides',
      fallInput(lineModel([8, 8], { endStiffness: [9e9, 3e5], endMass: [0.5, 4.75] }), [worker(0, 4)]),
    ],
  ]
  // Central differences with damping behind by half a step: (2/w) (sqrt(1 + z^2) - z), z = beta w/2 (Belytschko, Liu,
  // Moran, Nonlinear Finite Elements for Continua and Structures, 6.2; from memory).
  it.each(lines)('is within the limit of central differences, and uses most of it, where %s', (_, input) => {
    const mesh = buildMesh(input, {})
    const w = fastest(input, mesh)
    const z = (ROPE_DAMPING * w) / 2
    const limit = (2 / w) * (Math.sqrt(1 + z * z) - z)
    const got = stableStep(input, mesh)
    expect(got / limit).toBeLessThanOrEqual(1 + 1e-6)
    // The bound by rows is at most twice the square of the frequency, and so half the step where damping rules.
    expect(got / limit).toBeGreaterThan(0.5)
  })

  it('is that of twice the greatest stiffness of a row over its mass (Gershgorin)', () => {
    for (const [, input] of lines) {
      const mesh = buildMesh(input, {})
      let most = 0
      for (let n = 0; n < mesh.count; n++) {
        const on = input.workers.filter((_, i) => mesh.ties[i]!.node === n)
        let k = on.reduce((sum, w) => sum + w.connector.stiffness, 0)
        if (n === 0) k += input.model.endStiffness[0]
        if (n === mesh.count - 1) k += input.model.endStiffness[1]
        for (const e of [n - 1, n]) if (mesh.rest[e]) k += input.set.stiffness / mesh.rest[e]
        const moves = mesh.kind[n] !== FIXED && mesh.pieces.some((p) => n >= p.first && n <= p.last)
        if (moves) most = Math.max(most, (2 * k) / mesh.mass[n]!)
      }
      for (const w of input.workers) most = Math.max(most, (4 * w.connector.stiffness) / w.mass)
      const z = (ROPE_DAMPING * Math.sqrt(most)) / 2
      expectClose(stableStep(input, mesh), (2 / Math.sqrt(most)) * (Math.sqrt(1 + z * z) - z), { rel: 1e-9 })
    }
  })

  it('of a body alone, with nothing of the line moving, has its margin of two on the frequency', () => {
    const input = unlikeLine([worker(1, 7, stiff(60000))], 'held')
    const w = 2 * Math.sqrt(60000 / 100)
    const z = (ROPE_DAMPING * w) / 2
    expectClose(stableStep(input, buildMesh(input, {})), (2 / w) * (Math.sqrt(1 + z * z) - z), { rel: 1e-12 })
  })

  it('is cut to whole parts of a quarter of a millisecond, eight at least', () => {
    for (const input of [unlikeLine([W1], 'sliding'), unlikeLine([worker(1, 7)], 'held')]) {
      for (const part of [1, 0.3, 4]) {
        const { motion, stepsPerBlock } = startMotion(input, { step: part })
        const longest = stableStep(input, motion.chain.mesh) * 0.92 * Math.min(part, 1)
        expect(stepsPerBlock).toBe(Math.max(8, Math.ceil(2.5e-4 / longest)))
        expectClose(motion.dt, 2.5e-4 / stepsPerBlock, { rel: 1e-12 })
      }
    }
  })
})
