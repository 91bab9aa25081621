import { describe, expect, it } from 'vitest'
import { ruleById } from './index'
import { context, demand } from './testing/facts'
import { line, one, post } from './testing/one'

describe('stanchion rules', () => {
  it('end-tie-back is asked of end stanchions alone', () => {
    const bare = context((c) => {
      post(c).tieBackCount = 0
      line(c).stanchions[1]!.isEnd = false
    })
    const found = ruleById('end-tie-back')!.check(bare)
    expect(found).toHaveLength(1)
    expect(found[0]).toMatchObject({ subject: 'S1', status: 'fail', value: 0 })
  })

  it('loops-engaged and loops-beside say where the stanchion would hold', () => {
    const few = context((c) => {
      post(c).engaged = post(c).engaged.slice(0, 2)
      post(c).beside = { before: 2, after: 0 }
    })
    expect(one(few, 'loops-engaged', 'S1')).toMatchObject({ status: 'fail', value: 2, limit: 3 })
    expect(one(few, 'loops-engaged', 'S1').text).toContain(
      'Move it to station 2.05 m, between loop 7 and loop 8.',
    )
    expect(one(few, 'loops-beside', 'S1')).toMatchObject({ status: 'fail', value: 0 })
    const none = context((c) => {
      Object.assign(post(c), { row: null, engaged: [], beside: { before: 0, after: 0 }, loopCapacity: null })
    })
    expect(one(none, 'loops-engaged', 'S1').text).toContain('No loop row lies within 50 mm')
    expect(one(none, 'loop-strength', 'S1')).toMatchObject({ status: 'fail', value: null })
  })

  it('bar-size and bolt-edge', () => {
    const thin = context((c) => {
      c.rows[0] = { ...c.rows[0]!, row: { ...c.rows[0]!.row, barDiameter: 0.0095 } }
    })
    expect(one(thin, 'bar-size')).toMatchObject({ status: 'fail', subject: 'A' })
    const near = (plate: number, boltEdge = 0.085) =>
      one(
        context((c) => {
          post(c).stanchion = { ...post(c).stanchion, plate }
          post(c).boltEdge = boltEdge
        }),
        'bolt-edge',
        'S1',
      )
    expect(near(0)).toMatchObject({ status: 'fail', value: 0.085, limit: 0.15 })
    expect(near(0.005).status).toBe('fail')
    expect(near(0.0064).status).toBe('pass')
    expect(near(0.0064).text).not.toContain('Put plates')
    expect(near(0.0064, -0.01).status).toBe('fail')
    expect(near(0, 0.15).status).toBe('pass')
  })

  it('loop-strength fails where nothing holds the bracket', () => {
    const loose = context((c) => {
      post(c).loopPull = null
    })
    expect(one(loose, 'loop-strength', 'S1')).toMatchObject({ status: 'fail', value: null, limit: 2 })
    const idle = context((c) => {
      post(c).loopPull = demand(0)
    })
    expect(one(idle, 'loop-strength', 'S1')).toMatchObject({ status: 'pass', value: null })
    expect(one(context(), 'loop-strength', 'S1').value).toBeCloseTo(
      (2 * Math.PI * 0.0127 ** 2 * 414e6) / 4 / 7800,
      9,
    )
  })

  it('stanchion-strength takes the lower of head, shaft and lifted bracket', () => {
    expect(one(context(), 'stanchion-strength', 'S1').value).toBeCloseTo(26700 / 6800, 12)
    const pressed = context((c) => {
      post(c).axial = demand(50e3)
    })
    expect(one(pressed, 'stanchion-strength', 'S1')).toMatchObject({ status: 'fail' })
    const lifted = context((c) => {
      post(c).uplift = demand(30e3)
    })
    expect(one(lifted, 'stanchion-strength', 'S1').value).toBeCloseTo(53 / 30, 12)
  })
})
