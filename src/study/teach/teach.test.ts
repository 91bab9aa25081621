import { describe, expect, it } from 'vitest'
import { expectClose } from '../../../tests/support/close'
import { prove } from '../../../tests/support/proof'
import { footAt, PUBLISHED, sagAt, sagCurve, tieBackAt, tieBackCurve } from '.'

const LESSON = { pull: 10000, height: 1.067, headStiffness: 1e-3, strapStiffness: 250000 }

describe('the tie-back lesson', () => {
  it('has the closed form of a strap that takes it all: T/sin a, and T/tan a down', () => {
    const table = [
      [45, Math.SQRT2, 1],
      [30, 2, 1.7321],
      [20, 2.9238, 2.7475],
    ] as const
    for (const [angle, legs, down] of table) {
      const s = tieBackAt(LESSON, footAt(LESSON, angle))
      const source = 'statics: two bars, T/sin a and T/tan a'
      prove({
        what: `tie-back at ${angle} degrees: leg pull over T`,
        source,
        expected: legs,
        got: s.legs / LESSON.pull,
        unit: '',
        rel: 1e-4,
      })
      prove({
        what: `tie-back at ${angle} degrees: push down the stanchion over T`,
        source,
        expected: down,
        got: s.axial / LESSON.pull,
        unit: '',
        rel: 1e-4,
      })
    }
  })

  it('balances the head at every angle with a shaft that helps', () => {
    for (const s of tieBackCurve({ ...LESSON, headStiffness: 120000 })) {
      const a = (s.angle * Math.PI) / 180
      expectClose(s.shaft + s.legs * Math.sin(a), LESSON.pull, { rel: 1e-12 })
      expectClose(s.axial, s.legs * Math.cos(a), { rel: 1e-12 })
    }
  })
})

describe('the sag lesson', () => {
  it('rounds to the published marks', () => {
    for (const mark of PUBLISHED) {
      const s = sagAt(12, 4000, mark.angle)
      expect(Math.round(s!.ratio)).toBe(mark.ratio)
    }
  })

  it('pulls less the deeper it hangs', () => {
    const curve = sagCurve(12, 4000)
    expect(curve).toHaveLength(68)
    for (let i = 1; i < curve.length; i++) expect(curve[i]!.tension).toBeLessThan(curve[i - 1]!.tension)
  })
})
