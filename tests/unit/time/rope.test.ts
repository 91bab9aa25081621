/** The rope by itself: how it rings, and that its books close. */
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
