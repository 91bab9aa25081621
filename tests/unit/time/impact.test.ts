/** Weights dropped on the rope by itself, against textbook answers. */
import { describe, it } from 'vitest'
import { GRAVITY } from '../../../src/solver/model'
import { step } from '../../../src/solver/time/step'
import { prove } from '../../support/proof'
import { bareMotion } from './support'

/** A weight caught by a light elastic rope that hangs down from a fixed point; returns the greatest stretch and pull. */
function caughtWeight(c: {
  EA: number
  length: number
  mass: number
  speed: number
  load: number
  gravity?: boolean
}): {
  stretch: number
  pull: number
} {
  const elements = 16
  const rope = c.length
  const start = c.length * (1 + c.load / c.EA)
  // Light: a ten-thousandth of the weight, so that it is the massless spring of the textbooks.
  const m = bareMotion({
    at: (i) => [0, (-i * start) / elements],
    elements,
    rope,
    EA: c.EA,
    massPerMetre: (c.mass * 1e-4) / c.length,
    fixed: [0],
    endMass: c.mass,
    undamped: true,
  })
  const { nodes } = m.chain.mesh
  // The speed runs evenly down the rope, as in the first swing of a spring: no wave is started.
  for (let i = 1; i <= elements; i++) nodes[4 * i + 3] = (-c.speed * i) / elements
  let stretch = 0
  const period = 2 * Math.PI * Math.sqrt((c.mass * c.length) / c.EA)
  while (m.time < period) {
    if (c.gravity === false) for (let i = 1; i <= elements; i++) nodes[4 * i + 3]! += GRAVITY * m.dt
    step(m)
    stretch = Math.max(stretch, -nodes[4 * elements + 1]! - c.length)
  }
  return { stretch, pull: (c.EA * stretch) / c.length }
}

describe('weights dropped on an elastic rope', () => {
  it('pull with m g + sqrt((m g)^2 + 2 m g h k)', () => {
    const EA = 2.6e6
    const length = 12
    const mass = 100
    const h = 0.5
    const W = mass * GRAVITY
    const got = caughtWeight({ EA, length, mass, speed: Math.sqrt(2 * GRAVITY * h), load: 0 })
    prove({
      what: '100 kg dropped 0.5 m on 12 m of hanging rope, EA 2.6 MN',
      source: 'energy: m g + sqrt((m g)^2 + 2 m g h k)',
      expected: W + Math.sqrt(W * W + (2 * W * h * EA) / length),
      got: got.pull,
      unit: 'N',
      rel: 0.005,
    })
  })

  it('stretch a rod as in Gere, Mechanics of Materials, Example 2.16', () => {
    const EA = 210e9 * (Math.PI / 4) * 0.015 ** 2
    const got = caughtWeight({ EA, length: 2, mass: 20, speed: Math.sqrt(2 * GRAVITY * 0.15), load: 0 })
    prove({
      what: '20 kg falls 150 mm onto a 2 m rod of 15 mm',
      source:
        'Gere, Mechanics of Materials, Ex 2.16 (read in FOSSEE Python-Textbook-Companions), recomputed 1.7917 mm',
      expected: 1.7917e-3,
      got: got.stretch,
      unit: 'm',
      rel: 0.005,
    })
  })

  it('stretch a bar as in Bansal, Strength of Materials, 4.9', () => {
    const load = 10000
    const got = caughtWeight({
      EA: 210e9 * 1e-3,
      length: 4,
      mass: load / GRAVITY,
      speed: Math.sqrt(2 * GRAVITY * 0.03),
      load: 0,
    })
    prove({
      what: '10 kN falls 30 mm onto a 4 m bar of 1000 mm2',
      source: 'Bansal, Strength of Materials, 4.9 (read in FOSSEE companions), recomputed 3.5765 mm',
      expected: 3.5765e-3,
      got: got.stretch,
      unit: 'm',
      rel: 0.005,
    })
  })

  it('stop a hoist as in Pytel and Kiusalaas, Example 12.4', () => {
    const EA = 100e9 * 600e-6
    const mass = 2000
    const got = caughtWeight({ EA, length: 30, mass, speed: 2, load: mass * GRAVITY })
    prove({
      what: 'hoist: 2000 kg lowered at 2 m/s, cable 30 m of 600 mm2 stopped',
      source: 'Pytel and Kiusalaas, Mechanics of Materials, Ex 12.4 (read in FOSSEE companions), 146.1 kN',
      expected: 146110,
      got: got.pull,
      unit: 'N',
      rel: 0.005,
    })
  })

  it('stop a cage as in Bansal 4.19, kinetic energy only', () => {
    const area = 2500e-6
    const load = 60000
    const got = caughtWeight({
      EA: 200e9 * area,
      length: 15,
      mass: load / 9.81,
      speed: 1,
      load: 0,
      gravity: false,
    })
    prove({
      what: 'cage of 60 kN at 1 m/s, rope 15 m of 2500 mm2, kinetic energy only',
      source: 'Bansal, Strength of Materials, 4.19 (read in FOSSEE companions), 180.61 MPa',
      expected: 180.61e6,
      got: got.pull / area,
      unit: 'Pa',
      rel: 0.005,
    })
  })
})
