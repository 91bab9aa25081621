/** One body and its connector: how it starts to fall, what pulls on it and on what it is tied to, what is noted. */
import { describe, expect, it } from 'vitest'
import { GRAVITY } from '../../../src/solver/model'
import { type Body, bodyElastic, freshBody, stepBody, takeTurn } from '../../../src/solver/time/body'
import type { Motion } from '../../../src/solver/time/step'
import type { TimeWorker } from '../../../src/solver/time/types'
import { expectClose } from '../../support/close'
import { bareMotion, worker } from './support'

/** Node 2 of four at (5, 2), the heads of four stanchions. */
function still(): Motion {
  const m = bareMotion({
    at: (i) => [2.5 * i, 2],
    elements: 3,
    rope: 10,
    EA: 2e5,
    massPerMetre: 0.4,
    fixed: [0, 3],
  })
  m.dt = 1e-3
  m.sums = new Float64Array(3 + 8)
  return m
}
const NODE = { node: 2, stanchion: -1, x: 5, z: 2 }
const HEAD = { node: -1, stanchion: 2, x: 5, z: 2 }
const body = (change: Partial<TimeWorker>, tie = NODE, inTurn = false): Body =>
  freshBody(worker(0, 5, { surface: 1, dRingHeight: 1.4, ...change }), tie, inTurn)

describe('before the fall', () => {
  it('a lanyard: falls from the D-ring until it is taut below the line', () => {
    const b = body({ length: 1.8 })
    // Line 1 m over the surface, D-ring 1.4: h = 1.8 + 1.4 - 1.
    expectClose(b.standing, 2.4, { abs: 1e-12 })
    expectClose(b.freeFall, 2.2, { abs: 1e-12 })
    expectClose(b.stepsOff, -Math.sqrt((2 * 2.2) / GRAVITY), { rel: 1e-12 })
    expect(b).toMatchObject({
      state: 'standing',
      engaged: true,
      x: 5,
      lineZ: 2,
      u: 0,
      w: 0,
      brought: 0,
      arrestForce: 0,
      extension: 0,
      lowestAt: 0,
      ropeLowest: 2,
      pulledOff: false,
    })
    expect([b.z, b.from, b.lowest]).toEqual([b.standing, b.standing, b.standing])
    expect(b.connector.length).toBe(1.8)
  })

  it('a retractable: pays out to the D-ring and locks its length further on', () => {
    const under = body({ type: 'retractable', length: 0.6, dRingHeight: 0.7 })
    // D-ring 0.3 m under the line: locks after 0.6 m, with 0.9 m out.
    expectClose(under.connector.length, 0.9, { abs: 1e-12 })
    expectClose(under.freeFall, 0.6, { abs: 1e-12 })
    expectClose(under.standing, 1.7, { abs: 1e-12 })
    const over = body({ type: 'retractable', length: 0.6 })
    // D-ring 0.4 m over the line: falls past it first, and locks 0.6 m under it.
    expectClose(over.connector.length, 0.6, { abs: 1e-12 })
    expectClose(over.freeFall, 1, { abs: 1e-12 })
    expectClose(over.standing, 2.4, { abs: 1e-12 })
  })

  it('late or in turn: how far it falls is seen then', () => {
    expect(body({ delay: 0.2 }).freeFall).toBeNull()
    expectClose(body({ delay: 0.2, length: 1.8 }).stepsOff, 0.2 - Math.sqrt(4.4 / GRAVITY), { rel: 1e-12 })
    expect(body({}, NODE, true)).toMatchObject({ freeFall: null, stepsOff: Number.POSITIVE_INFINITY })
    expect(body({ delay: 0 }).freeFall).not.toBeNull()
  })

  it('a D-ring farther over the line than the lanyard reaches: free until it has fallen past', () => {
    expect(body({ length: 0.3 }).engaged).toBe(false)
    expect(body({ length: 0.4 }).engaged).toBe(true)
    // Hanging taut from the start: no fall, engaged to the last bit.
    expect(body({ length: 1.5, dRingHeight: -0.5 }).engaged).toBe(true)
  })
})

describe('the first step of a fall', () => {
  it('of one who stepped off before has the speed and place of a free fall, and brings in its energy', () => {
    const m = still()
    const b = body({ length: 1.8 })
    m.bodies = [b]
    b.connector.length = 9
    stepBody(b, m)
    const t = Math.sqrt(4.4 / GRAVITY)
    expect(b.state).toBe('falling')
    expect(b.connector.length).toBe(1.8)
    expectClose(b.from, 2.4 - 2.2, { abs: 1e-12 })
    expectClose(b.brought, 100 * GRAVITY * 2.2, { rel: 1e-12 })
    // Half a step of weight off the instant, as all velocities are.
    expectClose(b.w, -GRAVITY * (t + m.dt / 2), { rel: 1e-12 })
    expectClose(b.z, 0.2 + m.dt * b.w, { rel: 1e-9 })
    expect([b.u, b.x]).toEqual([0, 5])
  })

  it('of one whose time has not come is none', () => {
    const m = still()
    const b = body({ delay: 5 })
    stepBody(b, m)
    expect([b.state, b.z, b.w]).toEqual(['standing', b.standing, 0])
    m.time = b.stepsOff
    stepBody(b, m)
    expect(b.state).toBe('falling')
    expectClose(b.w, (-GRAVITY * m.dt) / 2, { rel: 1e-9 })
  })

  it('of a retractable locks where the line hangs by then', () => {
    const m = still()
    const b = body({ type: 'retractable', length: 0.6, dRingHeight: 0.7, delay: 5 })
    m.chain.mesh.nodes[9] = 1.8
    m.time = 9
    stepBody(b, m)
    expectClose(b.connector.length, 0.7, { abs: 1e-12 })
  })

  it('dragged off a standing worker by a taut lanyard alone', () => {
    for (const [change, pulled] of [
      [{ length: 0.9 }, true],
      [{ length: 0.9, type: 'retractable' }, false],
      [{ length: 1.1 }, false],
      [{ length: 0.95 - 5e-7 }, false],
      [{ length: 0.3 }, false],
    ] as const) {
      const m = still()
      const b = body(change, NODE, true)
      // The line sinks to 0.95 m under the D-ring.
      m.chain.mesh.nodes[9] = 1.45
      m.chain.mesh.nodes[8] = 5
      b.z = 2.4
      b.standing = 2.4
      stepBody(b, m)
      expect([b.pulledOff, b.state], JSON.stringify(change)).toEqual([
        pulled,
        pulled ? 'falling' : 'standing',
      ])
      if (!pulled) continue
      expect([b.from, b.brought]).toEqual([2.4, 0])
      expectClose(b.connector.force, 60000 * 0.05, { rel: 1e-9 })
    }
  })

  it('also by a line that slips away sideways', () => {
    const m = still()
    const b = body({ length: 0.9 }, NODE, true)
    b.z = 2.4
    m.chain.mesh.nodes[8] = 5 - 0.85
    stepBody(b, m)
    expect(b.pulledOff).toBe(true)
    expect(b.u).toBeLessThan(0)
  })
})

describe('in turn', () => {
  it('falls taut below the line as it hangs now, from where it stands', () => {
    const m = still()
    const b = body({ length: 1.8 }, NODE, true)
    m.chain.mesh.nodes[8] = 5.2
    m.chain.mesh.nodes[9] = 1.5
    m.time = 3
    takeTurn(b, m)
    // Taut at 1.5 - 1.8; stands at 2.4: 2.7 m.
    expectClose(b.z, -0.3, { abs: 1e-12 })
    expectClose(b.brought, 100 * GRAVITY * 2.7, { rel: 1e-12 })
    expectClose(b.w, -Math.sqrt(2 * GRAVITY * 2.7) + (GRAVITY * m.dt) / 2, { rel: 1e-12 })
    expectClose(b.standing, 2.4, { abs: 1e-12 })
    expect([b.x, b.state]).toEqual([5.2, 'falling'])
    expect([b.lowest, b.from]).toEqual([b.z, b.z])
  })

  it('hangs where it stands when the line has risen above that', () => {
    const m = still()
    const b = body({ length: 1, dRingHeight: 0 }, NODE, true)
    m.chain.mesh.nodes[9] = 3
    takeTurn(b, m)
    expectClose(b.z, 2, { abs: 1e-12 })
    expectClose(b.standing, 2, { abs: 1e-12 })
    expect(b.brought).toBe(0)
  })

  it('of a retractable: the length that is out to where it stands, and its lock-off', () => {
    const m = still()
    const b = body({ type: 'retractable', length: 0.6, dRingHeight: 0.7 }, NODE, true)
    m.chain.mesh.nodes[9] = 1.9
    takeTurn(b, m)
    // D-ring 0.2 m under the line: 0.8 m out when it locks, 0.6 m fallen.
    expectClose(b.connector.length, 0.8, { abs: 1e-12 })
    expectClose(b.z, 1.1, { abs: 1e-12 })
    expectClose(b.brought, 100 * GRAVITY * 0.6, { rel: 1e-12 })
  })
})

/** A body that falls, on a taut connector, askew. */
function hanging(tie: typeof NODE, change: Partial<Body> = {}): Body {
  return Object.assign(body({ length: 1 }, tie), {
    state: 'falling',
    x: 5.6,
    z: 1.19,
    u: 0.5,
    w: -2,
    ...change,
  })
}
const D = Math.hypot(0.6, 0.81)
const F = 60000 * (D - 1)
const UNIT = [0.6 / D, -0.81 / D] as const

describe('a step of a falling body', () => {
  it.each([
    ['a node', NODE],
    ['a stanchion', HEAD],
  ])('is pulled back along its connector, and pulls at %s as much', (_, tie) => {
    const m = still()
    const b = hanging(tie)
    stepBody(b, m)
    const u = 0.5 - (m.dt * F * UNIT[0]) / 100
    const w = -2 - m.dt * ((F * UNIT[1]) / 100 + GRAVITY)
    for (const [got, want] of [
      [b.u, u],
      [b.w, w],
      [b.x, 5.6 + m.dt * u],
      [b.z, 1.19 + m.dt * w],
    ] as const)
      expectClose(got, want, { rel: 1e-9 })
    const onNode = tie.node >= 0
    const force = [0, 0, 0, 0, onNode ? F * UNIT[0] : 0, onNode ? F * UNIT[1] : 0, 0, 0]
    for (const [i, v] of force.entries()) expectClose(m.chain.force[i], v, { rel: 1e-9 }, `force ${i}`)
    const sums = [0, 0, 0, 0, 0, 0, 0, onNode ? 0 : F * UNIT[0], onNode ? 0 : -F * UNIT[1], 0, 0]
    for (const [i, v] of sums.entries()) expectClose(m.sums[i], v, { rel: 1e-9 }, `sum ${i}`)
    expectClose(b.arrestForce, F, { rel: 1e-9 })
    expectClose(b.extension, D - 1, { rel: 1e-9 })
  })

  it('adds its pull to what others pull', () => {
    const m = still()
    for (const b of [hanging(NODE), hanging(NODE)]) stepBody(b, m)
    expectClose(m.chain.force[4], 2 * F * UNIT[0], { rel: 1e-9 })
    expectClose(m.chain.force[5], 2 * F * UNIT[1], { rel: 1e-9 })
    for (const b of [hanging(HEAD), hanging(HEAD)]) stepBody(b, m)
    expectClose(m.sums[7], 2 * F * UNIT[0], { rel: 1e-9 })
    expectClose(m.sums[8], -2 * F * UNIT[1], { rel: 1e-9 })
  })

  it('is free while slack, and while its connector has yet to come within its length', () => {
    const m = still()
    const slack = hanging(NODE, { z: 1.3 })
    stepBody(slack, m)
    expectClose(slack.w, -2 - m.dt * GRAVITY, { rel: 1e-12 })
    expect([slack.arrestForce, slack.extension]).toEqual([0, 0])
    const over = hanging(NODE, { z: 3.1, x: 5, engaged: false })
    stepBody(over, m)
    expectClose(over.w, -2 - m.dt * GRAVITY, { rel: 1e-12 })
    expect([over.engaged, bodyElastic(over, m.chain.mesh)]).toEqual([false, 0])
    // Hanging at its full length, to the last bit, counts as within it.
    over.z = 2 - 1 - 5e-7
    over.x = 5
    stepBody(over, m)
    expect(over.engaged).toBe(true)
    Object.assign(over, { engaged: false, x: 5, z: 2.99 })
    stepBody(over, m)
    expect(over.engaged).toBe(true)
    over.z = 0.9
    over.x = 5
    stepBody(over, m)
    expectClose(over.arrestForce, 4000, { rel: 1e-9 }, 'engaged from then on')
  })

  it('holds at the very place that it is tied to', () => {
    const b = hanging(NODE, { x: 5, z: 2 })
    stepBody(b, still())
    expect(Number.isFinite(b.z) && Number.isFinite(b.u)).toBe(true)
  })
})

describe('what is noted of a body', () => {
  it('its free fall when the connector first pulls, less what that has stretched by then', () => {
    const m = still()
    const b = hanging(NODE, { freeFall: null, standing: 2.4 })
    stepBody(b, m)
    expectClose(b.freeFall, 2.4 - 1.19 - (D - 1), { rel: 1e-9 })
    const kept = b.freeFall
    stepBody(b, m)
    expect(b.freeFall).toBe(kept)
    const slack = hanging(NODE, { freeFall: null, z: 1.3 })
    stepBody(slack, m)
    expect(slack.freeFall).toBeNull()
  })

  it('the greatest force and extension, the lowest places and when', () => {
    const m = still()
    m.time = 0.4
    const b = hanging(NODE, { lowest: 1.2, z: 1.18 })
    m.chain.mesh.nodes[9] = 1.99
    stepBody(b, m)
    expect([b.lowest, b.lowestAt, b.ropeLowest]).toEqual([1.18, 0.4, 1.99])
    const { arrestForce, extension } = b
    expect(extension).toBeGreaterThan(0)
    // Higher up, less pull: everything stays.
    Object.assign(b, { z: 1.205, x: 5.6 })
    m.chain.mesh.nodes[9] = 2.01
    m.time = 0.5
    stepBody(b, m)
    expect([b.lowest, b.lowestAt, b.ropeLowest, b.arrestForce, b.extension]).toEqual([
      1.18,
      0.4,
      1.99,
      arrestForce,
      extension,
    ])
    Object.assign(b, { z: 1, x: 5.6 })
    m.time = 0.6
    stepBody(b, m)
    expect([b.lowest, b.lowestAt]).toEqual([1, 0.6])
    expect(b.arrestForce).toBeGreaterThan(arrestForce)
    expectClose(b.extension, Math.hypot(0.6, 1.01) - 1, { rel: 1e-9 })
  })

  it('no extension of a connector that is slack again, though it has torn', () => {
    const m = still()
    const b = hanging(NODE, { x: 5, z: 0.5, extension: 0 })
    b.connector.torn = 0.6
    stepBody(b, m)
    expect([b.arrestForce, b.extension]).toEqual([0, 0])
    expect(b.connector.extension).toBeGreaterThan(0.4)
  })

  it('energy of its connector while it falls', () => {
    const m = still()
    expectClose(bodyElastic(hanging(HEAD), m.chain.mesh), 0.5 * 60000 * (D - 1) ** 2, { rel: 1e-9 })
    m.chain.mesh.nodes.set([5.1, 2.02], 8)
    const d = Math.hypot(0.5, 0.83)
    expect(d).toBeLessThan(1)
    expect(bodyElastic(hanging(NODE), m.chain.mesh)).toBe(0)
    expectClose(
      bodyElastic(hanging(NODE, { z: 1.1 }), m.chain.mesh),
      0.5 * 60000 * (Math.hypot(0.5, 0.92) - 1) ** 2,
      {
        rel: 1e-9,
      },
    )
    expect(bodyElastic(hanging(HEAD, { state: 'standing' }), m.chain.mesh)).toBe(0)
    expect(bodyElastic(hanging(HEAD, { engaged: false }), m.chain.mesh)).toBe(0)
  })
})
