/** Bodies on connectors tied to something that does not move. */
import { describe, expect, it } from 'vitest'
import { GRAVITY } from '../../../src/solver/model'
import { freshConnector, pullConnector } from '../../../src/solver/time/connector'
import { startMotion } from '../../../src/solver/time/motion'
import { step } from '../../../src/solver/time/step'
import { expectClose } from '../../support/close'
import { prove } from '../../support/proof'
import { fall, fallInput, lineModel, worker } from './support'

const rigid = (change: Parameters<typeof worker>[2]) => {
  const model = lineModel([8, 8])
  return fallInput(model, [worker(0, model.x[1]!, change)])
}

describe('energy absorber on a rigid anchor: x = m g h / (F - m g)', () => {
  // Goh 2015, J. Constr. Eng. Manage. 141(1): 31 drop tests, average force 3.2 to 4.7 kN, mean 3.9, 10th percentile
  // 3.4 (read in the abstract). 100 kg, 3.8 m as in Goh and Love 2010.
  it.each([3200, 3400, 3900, 4700])('at %i N', (plateau) => {
    const h = 3.8
    const length = 1.8
    // A stiff spring: the published relation has none. g 9.80665; h counts from the D-ring to the taut lanyard.
    const input = rigid({
      mass: 100,
      length,
      surface: 1.07 - 1.5 + h - length,
      connector: { stiffness: 5e6, plateau, maxExtension: 3 },
    })
    const got = fall(input).workers[0]!
    expectClose(got.freeFall, h, { abs: 1e-9 }, 'free fall')
    const W = 100 * GRAVITY
    prove({
      what: `absorber torn, 100 kg, 3.8 m free fall, average force ${plateau} N`,
      source: 'x = m g h/(F - m g) with the forces of 31 tests (Goh 2015, abstract): 3.2 to 4.7 kN, mean 3.9',
      expected: (W * h) / (plateau - W),
      got: got.connectorTorn,
      unit: 'm',
      rel: 0.005,
    })
  })

  it('tears 3.153 ft in the US form: 310 lb, 6 ft, 900 lbf', () => {
    const ft = 0.3048
    const lb = 0.45359237
    const input = rigid({
      mass: 310 * lb,
      length: 6 * ft,
      surface: 1.07 - 1.5,
      connector: { stiffness: 5e6, plateau: 900 * lb * GRAVITY, maxExtension: 3 },
    })
    prove({
      what: 'absorber torn, 310 lb, 6 ft, 900 lbf',
      source: 'x = m g h/(F - m g), computed: 310 x 6 / 590 = 3.153 ft',
      expected: 3.153 * ft,
      got: fall(input).workers[0]!.connectorTorn,
      unit: 'm',
      rel: 0.005,
    })
  })
})

it('an elastic connector pulls with m g + sqrt((m g)^2 + 2 m g h k)', () => {
  const input = rigid({ connector: { stiffness: 40000, plateau: 1e6, maxExtension: 1 } })
  const got = fall(input).workers[0]!
  const W = 100 * GRAVITY
  prove({
    what: '100 kg on an elastic lanyard of 40 kN/m at a stanchion',
    source: 'energy: m g + sqrt((m g)^2 + 2 m g h k)',
    expected: W + Math.sqrt(W * W + 2 * W * got.freeFall * 40000),
    got: got.arrestForce,
    unit: 'N',
    rel: 0.002,
  })
  expect(got.atStanchion).toBe(true)
  expect(got.lineDrop).toBe(0)
  expect(got.connectorTorn).toBe(0)
})

it('a connector that has torn to its end goes on along k and says so', () => {
  const got = fall(rigid({ connector: { stiffness: 60000, plateau: 2500, maxExtension: 0.3 } })).workers[0]!
  expect(got.connectorRanOut).toBe(true)
  expect(got.connectorTorn).toBe(0.3)
  const W = 100 * GRAVITY
  // m g (h + e) = Fp x + F^2/(2k), e = x + F/k: the root above Fp.
  const a = 1 / (2 * 60000)
  const b = -W / 60000
  const c = 2500 * 0.3 - W * (got.freeFall + 0.3)
  expectClose(got.arrestForce, (-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a), { rel: 0.002 }, 'force')
})

it('unloads along k, never pushes, and remembers what has torn', () => {
  const c = freshConnector({ stiffness: 50000, plateau: 3000, maxExtension: 0.5 }, 1.2)
  expect(pullConnector(c, 1.1)).toBe(0)
  expectClose(pullConnector(c, 1.24), 2000, { rel: 1e-12 })
  expect(pullConnector(c, 1.36)).toBeCloseTo(3000, 8)
  expectClose(c.torn, 0.1, { abs: 1e-12 })
  expectClose(pullConnector(c, 1.32), 1000, { rel: 1e-9 })
  expect(pullConnector(c, 1.29)).toBe(0)
  expectClose(pullConnector(c, 1.32), 1000, { rel: 1e-9 })
  expectClose(c.lost, 300, { rel: 1e-9 })
  expectClose(pullConnector(c, 1.8), 50000 * 0.1, { rel: 1e-9 })
  expect(c.ranOut).toBe(true)
})

describe('a body that swings', () => {
  /** A body on a stiff connector at the middle stanchion, let go at `angle` from the vertical. */
  function pendulum(length: number, mass: number, angle: number) {
    const input = rigid({ mass, length, connector: { stiffness: 5e8, plateau: 1e12, maxExtension: 1 } })
    const { motion } = startMotion(input, {})
    const b = motion.bodies[0]!
    b.state = 'falling'
    const r = length + (mass * GRAVITY * Math.cos(angle)) / 5e8
    b.x = b.tie.x + r * Math.sin(angle)
    b.z = b.tie.z - r * Math.cos(angle)
    return { motion, b }
  }

  it('as in Hibbeler, Dynamics, Example 14.9', () => {
    const { motion, b } = pendulum(20, 8000, Math.PI / 3)
    const angle = (): number => Math.atan2(b.x - b.tie.x, b.tie.z - b.z)
    while (angle() > Math.PI / 12 && motion.time < 10) step(motion)
    prove({
      what: '8000 kg on 20 m let go at 60 degrees: speed at 15 degrees',
      source: 'Hibbeler, Dynamics, Ex 14.9 (read in FOSSEE companions), 13.52 m/s',
      expected: 13.521,
      got: Math.hypot(b.u, b.w),
      unit: 'm/s',
      rel: 0.003,
    })
    prove({
      what: 'the same: pull of the arms at 15 degrees',
      source: 'Hibbeler, Dynamics, Ex 14.9, recomputed 148.94 kN',
      expected: 148940,
      got: b.connector.force,
      unit: 'N',
      rel: 0.01,
    })
  })

  it('as in Verma, Concepts of Physics, 8.5: 3 m/s at the lowest, 2 m/s at 60 degrees, l 0.5 m, g 10', () => {
    const { motion, b } = pendulum(0.5, 1, 0)
    // The book's g is 10: the same motion with speeds scaled by sqrt(g/10).
    const scale = Math.sqrt(GRAVITY / 10)
    b.u = 3 * scale
    while (Math.atan2(b.x - b.tie.x, b.tie.z - b.z) < Math.PI / 3 && motion.time < 3) step(motion)
    prove({
      what: 'bob of 3 m/s at the lowest: speed at 60 degrees',
      source: 'Verma, Concepts of Physics, 8.5 (read in FOSSEE companions), 2.0 m/s',
      expected: 2,
      got: Math.hypot(b.u, b.w) / scale,
      unit: 'm/s',
      rel: 0.005,
    })
  })
})
