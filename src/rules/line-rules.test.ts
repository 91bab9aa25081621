import { describe, expect, it } from 'vitest'
import { context, demand, unknown } from './testing/facts'
import { line, one, post } from './testing/one'

describe('line rules', () => {
  it('anchor-spacing fails over the documentation’s limit and passes where there is none', () => {
    const long = context((c) => {
      line(c).spans[0]!.length = 13
    })
    expect(one(long, 'anchor-spacing')).toMatchObject({
      status: 'fail',
      value: 13,
      limit: 12.5,
      margin: -0.5,
    })
    expect(one(long, 'anchor-spacing').text).toBe(
      'Line 1: longest span 13.00 m (S1 to S2), at most 12.50 m wanted (the leaflet). Add a stanchion between S1 and S2.',
    )
    const free = context((c) => {
      delete c.plan.basis.maxSpan
    })
    expect(one(free, 'anchor-spacing')).toMatchObject({ status: 'pass', value: 12, limit: null })
    expect(one(free, 'anchor-spacing').text).toContain('not limited')
    for (const lengths of [
      [9, 13, 11],
      [9, 11, 13],
      [13, 11, 9],
    ]) {
      const some = context((c) => {
        line(c).spans = lengths.map((length) => ({ length, slope: 0 }))
      })
      expect(one(some, 'anchor-spacing')).toMatchObject({ status: 'fail', value: 13 })
    }
    const none = context((c) => {
      line(c).spans = []
    })
    expect(one(none, 'anchor-spacing')).toMatchObject({ status: 'unknown', value: null })
    expect(one(none, 'line-slope')).toMatchObject({ status: 'unknown', value: null })
  })

  it('line-slope', () => {
    const steep = context((c) => {
      line(c).spans[0]!.slope = 5.2
    })
    expect(one(steep, 'line-slope')).toMatchObject({ status: 'fail', value: 5.2, limit: 5, unit: 'deg' })
    expect(one(context(), 'line-slope').text).toContain(
      '1.5 degrees against the horizontal (S1 to S2), at most 5 wanted',
    )
  })

  it('wire-rope-strength is breaking strength x termination over tension', () => {
    expect(one(context(), 'wire-rope-strength').value).toBeCloseTo((64050 * 0.8) / 17300, 12)
    const heavy = context((c) => {
      line(c).tension = demand(26000)
    })
    expect(one(heavy, 'wire-rope-strength')).toMatchObject({ status: 'fail', limit: 2 })
    expect(one(heavy, 'wire-rope-strength').text).toContain(
      'Worst: fall of Worker 1 in span S1 to S2, by energy, stiff line',
    )
    const broken = context((c) => {
      line(c).tension = demand(60000)
    })
    expect(one(broken, 'wire-rope-strength').text).toContain('past 51.24 kN the numbers mean nothing')
  })

  it('a demand known in part can fail a rule, never hold it', () => {
    const partly = (atLeast: number) =>
      context((c) => {
        line(c).tension = unknown(atLeast)
      })
    expect(one(partly(30000), 'wire-rope-strength').status).toBe('fail')
    expect(one(partly(30000), 'wire-rope-strength').text).toContain('Not all of it could be computed')
    expect(one(partly(10000), 'wire-rope-strength')).toMatchObject({ status: 'unknown', value: null })
  })

  it('hardware-strength takes the weakest of hardware and absorber, and is left out without any', () => {
    expect(one(context(), 'hardware-strength').value).toBeCloseTo(64e3 / 17300, 12)
    expect(one(context(), 'hardware-strength').text).toContain('wire-rope clamp')
    const weakAbsorber = context((c) => {
      line(c).absorber = { ...line(c).absorber!, breakingStrength: 20e3 }
    })
    expect(one(weakAbsorber, 'hardware-strength')).toMatchObject({ status: 'fail' })
    const bare = context((c) => {
      Object.assign(line(c), { absorber: null, absorberExtension: null, hardware: [] })
    })
    expect(one(bare, 'hardware-strength')).toBeUndefined()
    expect(one(bare, 'absorber-runs-out')).toBeUndefined()
  })

  it('absorber-runs-out', () => {
    const out = context((c) => {
      line(c).absorberExtension = demand(1.2)
    })
    expect(one(out, 'absorber-runs-out')).toMatchObject({ status: 'fail', limit: 1.07 })
    expect(one(out, 'absorber-runs-out').text).toContain('It has run out')
    for (const lacking of ['absorber', 'absorberExtension'] as const) {
      const without = context((c) => {
        Object.assign(line(c), { [lacking]: null })
      })
      expect(one(without, 'absorber-runs-out')).toBeUndefined()
    }
  })

  it('rope-held warns, never fails, and takes stanchions too', () => {
    const jam = context((c) => {
      post(c).heldShaft = demand(20000)
    })
    expect(one(jam, 'rope-held')).toMatchObject({ status: 'warn' })
    expect(one(jam, 'rope-held').value).toBeCloseTo(26700 / 20000, 12)
    expect(one(jam, 'rope-held').text).toContain('stanchion S1')
  })

  it('eye-offset tells the nearer end of its range', () => {
    const at = (eyeOffset: number) =>
      one(
        context((c) => {
          line(c).eyeOffset = eyeOffset
        }),
        'eye-offset',
      )
    expect(at(0.2)).toMatchObject({ status: 'fail', limit: 0.3 })
    expect(at(2.3)).toMatchObject({ status: 'fail', limit: 2.1 })
    expect(at(2.1)).toMatchObject({ status: 'pass' })
    expect(at(2.3).margin).toBeCloseTo(-0.2, 12)
  })

  it('time-method warns above its threshold and tells the ratio always', () => {
    expect(one(context(), 'time-method').text).toContain('17.30 kN in time over 17.00 kN by energy is 1.02')
    const wave = context((c) => {
      line(c).timeTension = 21000
    })
    expect(one(wave, 'time-method')).toMatchObject({ status: 'warn', limit: 1.2 })
  })

  it('time-method gives no ratio where either method gives no tension', () => {
    const ratioOf = (energyTension: number | { unknown: string }) =>
      one(
        context((c) => {
          line(c).energyTension = energyTension
        }),
        'time-method',
      )
    for (const nothing of [0, { unknown: 'the law did not converge' }])
      expect(ratioOf(nothing)).toMatchObject({ status: 'unknown', value: null })
    expect(ratioOf({ unknown: 'the law did not converge' }).text).toContain('the law did not converge')
    expect(ratioOf(0).text).toContain('the energy method gives no tension')
  })

  it('rope-held says whose grip it is, and where held and sliding are the same', () => {
    const said = (stanchions: number, grip: 'sliding' | 'held'): string =>
      one(
        context((c) => {
          const [first] = line(c).stanchions
          line(c).stanchions = Array.from({ length: stanchions }, () => first!)
          line(c).line.grip = grip
        }),
        'rope-held',
      ).text
    expect(said(2, 'sliding')).toContain('no intermediate stanchion')
    expect(said(3, 'sliding')).toContain('a rope that jams')
    expect(said(3, 'held')).toContain('own grip')
  })

  it('rescue-plan wants a record that is filled in', () => {
    const none = context((c) => {
      c.plan.records = []
    })
    expect(one(none, 'rescue-plan')).toMatchObject({ status: 'fail', value: 0 })
    const empty = context((c) => {
      Object.assign(c.plan.records![0]!, { method: ' ', minutes: 0 })
    })
    expect(one(empty, 'rescue-plan').text).toContain('without method, time')
    expect(one(context(), 'rescue-plan').text).toContain('2 people, 10 min')
    expect(one(context(), 'rescue-plan').status).toBe('pass')
  })

  it.each([
    [{ gear: ' ' }, 'without gear.'],
    [{ people: 0 }, 'without people.'],
    [{ people: -1, minutes: 10 }, 'without people.'],
    [{ gear: '', minutes: 0 }, 'without gear, time.'],
  ])('rescue-plan tells each thing that is left out: %o', (left, says) => {
    const lacking = context((c) => {
      Object.assign(c.plan.records![0]!, left)
    })
    expect(one(lacking, 'rescue-plan').status).toBe('fail')
    expect(one(lacking, 'rescue-plan').text).toContain(says)
  })

  it('rescue-plan takes the last record of its own line and of its own kind', () => {
    const whole = context().plan.records![0]!
    const other = context((c) => {
      c.plan.records = [{ ...whole, line: 'L9' } as typeof whole]
    })
    expect(one(other, 'rescue-plan').text).toContain('no rescue plan recorded')
    const followed = context((c) => {
      const out = { kind: 'out-of-service', id: 'R3', at: whole.at, by: 'B', line: 'L1', reason: 'ice' }
      const later = { ...whole, id: 'R2', gear: '' }
      c.plan.records = [whole, later, out, { ...whole, id: 'R4', line: 'L9' }] as NonNullable<
        typeof c.plan.records
      >
    })
    expect(one(followed, 'rescue-plan').text).toContain('without gear.')
    const nowhere = context((c) => {
      delete (c.plan as { records?: unknown }).records
    })
    expect(one(nowhere, 'rescue-plan').status).toBe('fail')
  })
})
