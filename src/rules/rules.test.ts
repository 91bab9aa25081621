import { describe, expect, it } from 'vitest'
import { disagreements } from '../solver/explain'
import type { RuleContext } from './context'
import { worstDemand } from './context'
import type { Finding } from './finding'
import { explainFinding, findingsOf, ruleById, rules } from './index'
import { context, demand, tieBackFacts, unknown } from './testing/facts'

/** The published list of rule ids. */
const IDS =
  `anchor-spacing line-slope end-tie-back tie-back-angle tie-back-distance tie-back-side tie-back-loops-distinct
tie-back-loops-adjacent strap-length tie-back-strength loops-engaged loops-beside bar-size bolt-edge loop-strength
loop-side-pull stanchion-strength wire-rope-strength hardware-strength absorber-runs-out rope-held eye-offset free-fall
arrest-force deceleration connector-runs-out worker-mass obstacle-gap time-method rescue-plan`.split(/\s+/)

const one = (ctx: RuleContext, rule: string, subject?: string): Finding => {
  const found = ruleById(rule)!
    .check(ctx)
    .filter((f) => subject === undefined || f.subject === subject)
  return found[0]!
}
const line = (ctx: RuleContext) => ctx.lines[0]!
const post = (ctx: RuleContext) => line(ctx).stanchions[0]!
const worker = (ctx: RuleContext) => line(ctx).workers[0]!

/** Replaces every computed number by an unknown. */
function forget(ctx: RuleContext): void {
  const l = line(ctx)
  Object.assign(l, { tension: unknown(), heldTension: unknown(), absorberExtension: unknown() })
  const lost = { unknown: 'the line did not converge' }
  Object.assign(l, { energyTension: lost, timeTension: lost, eyeOffset: lost })
  Object.assign(worker(ctx), {
    freeFall: unknown(),
    arrestForce: unknown(),
    extension: unknown(),
    torn: unknown(),
  })
  for (const s of l.stanchions) {
    Object.assign(s, {
      shaft: unknown(),
      axial: unknown(),
      heldShaft: unknown(),
      heldAxial: unknown(),
      loopPull: unknown(),
    })
  }
  for (const t of l.tieBacks) {
    for (const leg of t.legs) leg.force = unknown()
    t.strapNeeded = lost
    t.loopsBetween = lost
  }
  ctx.obstacles[0]!.gap = lost
}

describe('the registry', () => {
  it('holds the thirty rules, each once', () => {
    expect(rules.map((r) => r.id).sort()).toEqual([...IDS].sort())
    expect(ruleById('no-such-rule')).toBeUndefined()
  })

  it('gives one finding per rule and subject', () => {
    const keys = findingsOf(context()).map((f) => `${f.rule} ${f.subject}`)
    expect(new Set(keys).size).toBe(keys.length)
    expect(new Set(keys.map((k) => k.split(' ')[0])).size).toBe(30)
  })

  it('holds everywhere on good facts, but for the side pull that is always told', () => {
    const off = findingsOf(context()).filter((f) => f.status !== 'pass')
    expect(off.map((f) => [f.rule, f.status])).toEqual([['loop-side-pull', 'warn']])
  })
})

describe('every finding', () => {
  const worlds: [string, RuleContext][] = [
    ['si', context()],
    ['us', context(undefined, 'us')],
    ['unknown', context(forget)],
  ]
  it.each(worlds)('%s: says a whole sentence with no forbidden word and no broken number', (_, ctx) => {
    for (const f of findingsOf(ctx)) {
      expect(f.text, f.rule).toMatch(/^[A-Z].*\.$/)
      expect(f.text, f.rule).not.toMatch(
        /NaN|Infinity|undefined|null|\b(safe|OK|compliant|approved)\b|!| {2}| ,/,
      )
      expect(f.source.length).toBeGreaterThan(3)
      for (const n of [f.value, f.limit, f.margin ?? null])
        expect(n === null || Number.isFinite(n)).toBe(true)
    }
  })

  it('is unknown with the reason where its number could not be computed', () => {
    const found = findingsOf(context(forget)).filter((f) => f.status === 'unknown')
    // 6 of the line, 4 of its tie-back, 2 of each of 2 stanchions, 4 of the worker, 1 of the obstacle
    expect(found).toHaveLength(19)
    for (const f of found) {
      expect(f.value).toBeNull()
      expect(f.text).toContain('the line did not converge')
    }
  })

  it('has a sum whose root is its value and which holds when worked out again', () => {
    const ctx = context()
    for (const f of findingsOf(ctx)) {
      const tree = explainFinding(ctx, f)
      if (f.value === null || f.rule === 'rescue-plan') continue
      expect(tree, f.rule).not.toBeNull()
      expect(Math.abs(tree!.value! - f.value), f.rule).toBeLessThan(1e-9 * Math.max(1, Math.abs(f.value)))
      expect(disagreements(tree!), f.rule).toEqual([])
    }
  })
})

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
  })
})

describe('tie-back rules', () => {
  it('tie-back-angle names the leg, the loop it is on and the loop that would do', () => {
    const steep = context((c) => {
      line(c).tieBacks = [tieBackFacts(4, 3)]
    })
    const f = one(steep, 'tie-back-angle')
    expect(f.status).toBe('fail')
    expect(f.text).toBe(
      'Tie-back T1, strap leg: 35.1 degrees from the vertical, at least 45 wanted (common practice). Move its foot from loop 5 to loop 3.',
    )
    // The foot it names does: 1.35 m out at a height of 1.067 m.
    expect((Math.atan2(1.35, 1.067) * 180) / Math.PI).toBeGreaterThan(45)
    const nowhere = context((c) => {
      line(c).tieBacks = [tieBackFacts(4, 3)]
      c.plan.basis.minTieBackAngle = 80
    })
    expect(one(nowhere, 'tie-back-angle').text).toContain('No loop of row A lies far enough out')
  })

  it('tie-back-distance: holds at the height, warns half a spacing short of it, fails beyond', () => {
    const at = (index: number, height: number) =>
      one(
        context((c) => {
          line(c).tieBacks = [{ ...tieBackFacts(index, index - 1), height }]
        }),
        'tie-back-distance',
      ).status
    expect(at(2, 1.35)).toBe('pass')
    expect(at(2, 1.49)).toBe('warn')
    expect(at(2, 1.51)).toBe('fail')
  })

  it('tie-back-side, loops distinct, loops adjacent', () => {
    const wrong = context((c) => {
      line(c).tieBacks[0]!.legs[1].farSide = false
    })
    expect(one(wrong, 'tie-back-side')).toMatchObject({ status: 'fail', value: 1, limit: 2 })
    expect(one(wrong, 'tie-back-side').text).toContain('tensioner leg (loop 2)')
    const same = context((c) => {
      line(c).tieBacks = [tieBackFacts(2, 2)]
    })
    expect(one(same, 'tie-back-loops-distinct')).toMatchObject({ status: 'fail', value: 1 })
    const apart = context((c) => {
      line(c).tieBacks = [tieBackFacts(4, 1)]
    })
    expect(one(apart, 'tie-back-loops-adjacent')).toMatchObject({ status: 'warn', value: 2, limit: 0 })
  })

  it('strap-length and tie-back-strength', () => {
    const short = context((c) => {
      line(c).tieBacks[0]!.strapNeeded = 6.2
    })
    expect(one(short, 'strap-length')).toMatchObject({ status: 'fail', limit: 6.1 })
    expect(one(context(), 'tie-back-strength').value).toBeCloseTo(62e3 / 6502, 12)
    const hard = context((c) => {
      line(c).tieBacks[0]!.legs[1].force = demand(40e3)
    })
    expect(one(hard, 'tie-back-strength').text).toContain(
      'the tensioner leg holds 62.00 kN against 40.00 kN, 1.55 to 1',
    )
  })

  it('loop-side-pull always warns, with the components of the larger leg and both capacities', () => {
    const f = one(context(), 'loop-side-pull')
    const t = tieBackFacts()
    expect(f).toMatchObject({ status: 'warn', value: 6502 })
    // Plain statics: components of 6502 N along 1.35 m and up 1.067 m.
    const length = Math.hypot(1.35, 1.067)
    expect(f.text).toContain(`${((6502 * 1.35) / length / 1000).toFixed(2)} kN along`)
    expect(f.text).toContain(`${((6502 * 1.067) / length / 1000).toFixed(2)} kN up`)
    expect(f.limit).toBeCloseTo((2 * Math.PI * 0.0127 ** 2 * 414e6) / 4, 6)
    expect(f.text).toContain(`${(((0.0127 ** 3 / 6) * 414e6) / t.legs[0].row.height / 1000).toFixed(2)} kN`)
  })
})

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
})

describe('worstDemand', () => {
  it('takes the greatest and keeps its corner; an unknown makes it unknown with what is known beside', () => {
    expect(worstDemand([demand(1), demand(3), demand(2)])).toEqual(demand(3))
    const mixed = worstDemand([demand(1), unknown(), demand(3)])
    expect(mixed).toMatchObject({ value: { unknown: 'the line did not converge' }, atLeast: 3 })
    expect(worstDemand([]).value).toEqual({ unknown: 'no fall was computed' })
    expect(worstDemand([demand(Number.NaN)]).value).toMatchObject({ unknown: expect.any(String) })
  })
})
