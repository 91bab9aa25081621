/** The rope by itself: waves, weights dropped on it, all against textbook answers. */
import { describe, expect, it } from 'vitest'
import { GRAVITY } from '../../../src/solver/model'
import { step } from '../../../src/solver/time/step'
import { expectClose } from '../../support/close'
import { prove } from '../../support/proof'
import { bareMotion } from './support'

describe('a plucked taut rope rings at n/(2L) sqrt(T/m)', () => {
  const length = 10
  const EA = 2.6e6
  const T = 20000
  const massPerMetre = 0.362
  it.each([1, 2, 3])('mode %i', (mode) => {
    const elements = 80
    const rope = length / (1 + T / EA)
    const m = bareMotion({
      at: (i) => [(i * length) / elements, 0],
      elements,
      rope,
      EA,
      massPerMetre,
      fixed: [0, elements],
    })
    const { nodes } = m.chain.mesh
    for (let i = 1; i < elements; i++) nodes[4 * i + 3] = 0.5 * Math.sin((mode * Math.PI * i) / elements)
    const crossings = upwardCrossings(m, Math.round(elements / (2 * mode)), 4 * mode + 1)
    const period = (crossings[crossings.length - 1]! - crossings[0]!) / (crossings.length - 1)
    prove({
      what: `plucked rope, 10 m at 20 kN, mode ${mode}`,
      source: 'string equation f = n/(2L) sqrt(T/m), m the mass of the stretched metre',
      expected: (mode / (2 * length)) * Math.sqrt(T / ((massPerMetre * rope) / length)),
      got: 1 / period,
      unit: 'Hz',
      rel: 0.01,
    })
  })
})

/** Times at which a node's speed turns from down to up, by linear interpolation. */
function upwardCrossings(m: ReturnType<typeof bareMotion>, node: number, count: number): number[] {
  const times: number[] = []
  let before = m.chain.mesh.nodes[4 * node + 3]!
  while (times.length < count && m.time < 2) {
    step(m)
    const now = m.chain.mesh.nodes[4 * node + 3]!
    if (before < 0 && now >= 0) times.push(m.time - (m.dt * now) / (now - before))
    before = now
  }
  expect(times.length).toBe(count)
  return times
}

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

it('loses nothing that is not booked while it rings', () => {
  const elements = 60
  const m = bareMotion({
    at: (i) => [(i * 8) / elements, 0],
    elements,
    rope: 7.99,
    EA: 3e6,
    massPerMetre: 0.4,
    fixed: [0, elements],
  })
  const { nodes, mass } = m.chain.mesh
  nodes[4 * 30 + 3] = -30
  const energy = (): number => {
    let sum = 0
    for (let i = 0; i <= elements; i++) {
      sum +=
        mass[i]! * (0.5 * (nodes[4 * i + 2]! ** 2 + nodes[4 * i + 3]! ** 2) + GRAVITY * nodes[4 * i + 1]!)
      if (i === elements) continue
      const l = Math.hypot(nodes[4 * i + 4]! - nodes[4 * i]!, nodes[4 * i + 5]! - nodes[4 * i + 1]!)
      sum += (0.5 * 3e6 * Math.max(0, l - m.chain.mesh.rest[i]!) ** 2) / m.chain.mesh.rest[i]!
    }
    return sum
  }
  const before = energy()
  const brought = 0.5 * mass[30]! * 900
  for (let i = 0; i < 20000; i++) step(m)
  expect(m.lost).toBeGreaterThan(0.05 * brought)
  expectClose(energy() + m.lost, before, { abs: 0.005 * brought }, 'energy and loss')
})
