/**
 * A model of two moving points, stiff to soft: a body on a tearing connector, tied to the middle of a rope of two
 * elements. Small enough for an independent integrator: odex (Hairer, Norsett, Wanner: Solving Ordinary Differential
 * Equations I) with its own coding of the same equations.
 */
import { createRequire } from 'node:module'
import { expect, it } from 'vitest'
import { GRAVITY } from '../../../src/solver/model'
import { freshBody } from '../../../src/solver/time/body'
import { step } from '../../../src/solver/time/step'
import { prove } from '../../support/proof'
import { bareMotion, worker } from './support'

/** The part of odex that is used; its own sources do not stand up to this project's strict types. */
interface Integrator {
  absoluteTolerance: number
  relativeTolerance: number
  maxSteps: number
  maxStepSize: number
  solve(
    rates: (x: number, y: number[]) => number[],
    from: number,
    start: number[],
    to: number,
    seen: (step: number, x0: number, x1: number, y: number[]) => void,
  ): unknown
}
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (size: number) => Integrator }

const HALF = 5
const EA = 2.6e6
const REST = HALF * 0.9985
const RHO = 0.36
const BETA = 20e-6
const MASS = 95
const K = 60000

/** Greatest drop of the rope's middle and of the body, and the greatest tension, by this program's own step. */
function ours(plateau: number, h: number) {
  const m = bareMotion({
    at: (i) => [i * HALF, 0],
    elements: 2,
    rope: 2 * REST,
    EA,
    massPerMetre: RHO,
    fixed: [0, 2],
  })
  const tie = { node: 1, stanchion: -1, x: HALF, z: 0 }
  const connector = { stiffness: K, plateau, maxExtension: 5 }
  const w = worker(0, HALF, { mass: MASS, connector, dRingHeight: 1, surface: h - 1.2 - 1 })
  // Smaller than it need be: the two points are compared, not the step.
  m.dt /= 20
  m.chain.figures[0]!.set([m.dt / (RHO * REST), GRAVITY * m.dt, m.dt], 3)
  const body = freshBody(w, tie, false)
  m.bodies.push(body)
  const { nodes } = m.chain.mesh
  // The two elements have one run with the tie inside: cut it so that the connector's force reaches the node.
  const run = m.chain.runs[0]!
  m.chain.runs = [
    { ...run, last: 1 },
    { ...run, first: 1, out: new Float64Array(run.out.length) },
  ]
  m.chain.ends = Int32Array.from([0, 1, 2])
  let drop = 0
  let low = 0
  let tension = 0
  while (m.time < 0.8) {
    step(m)
    drop = Math.max(drop, -nodes[5]!)
    low = Math.max(low, -body.z)
    tension = Math.max(tension, EA * (Math.hypot(HALF, nodes[5]!) / REST - 1))
  }
  return { drop, low, tension, torn: body.connector.torn }
}

/** The same by odex: y = [z, w, zb, wb, torn]; tearing keeps the connector at its plateau. */
function theirs(plateau: number, h: number) {
  const m = RHO * REST
  const rates = (_: number, y: number[]): number[] => {
    const [z, w, zb, wb, torn] = y as [number, number, number, number, number]
    const l = Math.hypot(HALF, z)
    const T = Math.max(0, (EA / REST) * (l - REST + (BETA * w * z) / l))
    const stretch = z - zb - 1.2 - torn
    const tearing = stretch >= plateau / K && w - wb > 0
    const F = stretch <= 0 ? 0 : Math.min(K * stretch, plateau)
    return [w, (-2 * T * z) / l / m - F / m - GRAVITY, wb, F / MASS - GRAVITY, tearing ? w - wb : 0]
  }
  const s = new Solver(5)
  s.absoluteTolerance = 1e-7
  s.relativeTolerance = 1e-7
  s.maxSteps = 1e6
  s.maxStepSize = 1e-4
  let drop = 0
  let low = 0
  let tension = 0
  let torn = 0
  s.solve(rates, 0, [0, 0, -1.2, -Math.sqrt(2 * GRAVITY * h), 0], 0.8, (_n, _x0, _x1, y) => {
    drop = Math.max(drop, -y[0]!)
    low = Math.max(low, -y[2]!)
    tension = Math.max(tension, EA * (Math.hypot(HALF, y[0]!) / REST - 1))
    torn = y[4]!
  })
  return { drop, low, tension, torn }
}

it.each([
  ['soft from 3.5 kN', 3500, 1.2],
  ['elastic all through', 1e6, 0.6],
] as const)('two moving points, connector %s, agree with odex', (name, plateau, h) => {
  const a = ours(plateau, h)
  const b = theirs(plateau, h)
  const source = 'odex 2.0.4, independent coding of the same two points'
  const hold = (what: string, got: number, expected: number, unit: string): void =>
    prove({ what: `two points, ${name}: ${what}`, source, expected, got, unit, rel: 0.01 })
  hold('greatest drop of the rope', a.drop, b.drop, 'm')
  hold('lowest point of the body', a.low, b.low, 'm')
  hold('greatest tension', a.tension, b.tension, 'N')
  if (plateau < 1e5) {
    expect(b.torn).toBeGreaterThan(0.1)
    hold('torn length', a.torn, b.torn, 'm')
  }
})
