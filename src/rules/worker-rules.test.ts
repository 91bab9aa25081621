import { describe, expect, it } from 'vitest'
import type { RuleContext } from './context'
import { context, demand } from './testing/facts'
import { one, worker } from './testing/one'

describe('worker and obstacle rules', () => {
  it('free-fall takes the stricter of basis and rating, and says what would do', () => {
    const far = context((c) => {
      worker(c).freeFall = demand(1.93)
    })
    expect(one(far, 'free-fall')).toMatchObject({ status: 'fail', limit: 1.83 })
    expect(one(far, 'free-fall').text).toContain('A connector of 1.10 m or less would do.')
    const rated = context((c) => {
      worker(c).connector = { ...worker(c).connector, ratedFreeFall: 0.6 }
    })
    expect(one(rated, 'free-fall')).toMatchObject({ status: 'fail', limit: 0.6 })
    expect(one(rated, 'free-fall').text).toContain('rating of lanyard 4 ft')
  })

  it('shows more digits where value and limit would read the same', () => {
    const close = context((c) => {
      worker(c).freeFall = demand(1.834)
    })
    expect(one(close, 'free-fall').text).toContain('1,834 mm on lanyard 4 ft, at most 1,830 mm wanted')
  })

  it('arrest-force, deceleration, connector-runs-out, worker-mass', () => {
    const bad = context((c) => {
      Object.assign(worker(c), { arrestForce: demand(8100), extension: demand(1.1), torn: demand(1.07) })
      worker(c).worker = { ...worker(c).worker, mass: 150 }
    })
    for (const rule of ['arrest-force', 'deceleration', 'connector-runs-out', 'worker-mass']) {
      expect(one(bad, rule).status, rule).toBe('fail')
    }
    expect(one(bad, 'connector-runs-out').text).toContain('It has run out')
    expect(one(bad, 'worker-mass')).toMatchObject({ limit: 140, margin: -10 })
    const beside = context((c) => {
      worker(c).torn = { value: 0.9, corner: { ...worker(c).torn.corner!, span: null, beside: 'S2' } }
    })
    expect(one(beside, 'connector-runs-out').text).toContain('beside stanchion S2')
  })

  it('obstacle-gap: clash, free, elsewhere, not known', () => {
    const gap = (g: RuleContext['obstacles'][number]['gap'], horizontal: number | null = null) =>
      one(
        context((c) => {
          Object.assign(c.obstacles[0]!, { gap: g, horizontal })
        }),
        'obstacle-gap',
      )
    expect(gap(-0.25)).toMatchObject({ status: 'fail', value: -0.25, margin: -0.25 })
    expect(gap(-0.25).text).toBe(
      'Shed: the fall room reaches 0.25 m into it, its margin of 0.30 m counted (Line 1, station 6.00 m, Worker 1).',
    )
    expect(gap(0).status).toBe('pass')
    expect(gap(null, 3.2)).toMatchObject({ status: 'pass', value: null })
    expect(gap(null, 3.2).text).toContain('3.20 m away horizontally')
    expect(gap({ unknown: 'its model is missing' })).toMatchObject({ status: 'unknown' })
  })

  it('obstacle-gap says where and whose as far as that is known, and no more', () => {
    const told = (o: Partial<RuleContext['obstacles'][number]>): ReturnType<typeof one> =>
      one(
        context((c) => {
          Object.assign(c.obstacles[0]!, o)
        }),
        'obstacle-gap',
      )
    expect(told({ margin: 0 }).text).toBe(
      'Shed: 1.20 m free below the fall room (Line 1, station 6.00 m, Worker 1).',
    )
    expect(told({ margin: 0, station: null, worker: null }).text).toContain('fall room (Line 1).')
    expect(told({ worker: 'W9', line: 'L9' }).text).toContain('counted (station 6.00 m).')
    const plain = told({ name: '  ', margin: 0, line: null, station: null, worker: null })
    expect(plain.text).toBe('O1: 1.20 m free below the fall room.')
    expect(plain.line).toBeUndefined()
    expect(told({}).line).toBe('L1')
    expect(told({ gap: null }).text).toBe('Shed: outside the plan area of every fall room.')
  })
})
