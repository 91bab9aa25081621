import { describe, expect, it } from 'vitest'
import { chapterOf } from '../../../src/handover/package/context'
import { sensitivityChapter } from '../../../src/handover/package/sensitivity'
import { letters } from '../../../src/handover/pdf/letters'
import { framed, sheetOf } from '../../../src/handover/pdf/paper'
import { formatBoth } from '../../../src/plan/units'
import { spreadOf } from '../../../src/study/spread/spread'
import { hasPoppler, inputOf, MADE_AT, readBack, samplePlan } from './made'

const plan = samplePlan()
const line = plan.lines[0]!.id
const input = inputOf(plan)
const set = letters(input.fonts)

describe('the chapter on sensitivity', () => {
  it.skipIf(!hasPoppler)('says samples, seed, corner, quantiles and what matters, as computed', async () => {
    const result = spreadOf({ plan, line, samples: 40, seed: 20260314 })!
    const content = sensitivityChapter(chapterOf({ ...input, spreads: [{ line, result }] }, set))
    const page = (n: number, of: number): string => `${n} ${of}`
    const frame = { sheet: sheetOf('us'), title: '', head: ['', ''] as [string, string], foot: [''], page }
    const { text } = await readBack(framed(set, { ...frame, madeAt: MADE_AT }, content))
    expect(text).toContain('40 samples, seed 20260314')
    for (const [unit, of] of [
      ['m', result.clearance],
      ['N', result.tension],
    ] as const) {
      for (const value of [of.corner, ...of.quantiles.map((q) => q.value)]) {
        expect(text).toContain(formatBoth(value, unit, plan.units))
      }
    }
    for (const { label } of result.inputs) expect(text).toContain(label)
    expect(text).toContain(`${(100 * result.clearance.matters[0]!.share).toFixed(1)} %`)
  })

  it('is left out where nothing was computed', () => {
    expect(sensitivityChapter(chapterOf(input, set))).toEqual([])
  })
})
