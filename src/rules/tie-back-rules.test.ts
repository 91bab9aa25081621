import { describe, expect, it } from 'vitest'
import { context, demand, tieBackFacts } from './testing/facts'
import { line, one } from './testing/one'

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
