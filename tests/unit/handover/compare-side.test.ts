import { describe, expect, it } from 'vitest'
import { svgText } from '../../../src/drawings/svg'
import { paperTheme } from '../../../src/drawings/theme'
import { comparePlans } from '../../../src/handover/compare'
import { findingRows, governingRows } from '../../../src/handover/compare/tables'
import { tapePairs } from '../../../src/handover/compare/tapes'
import type { Plan } from '../../../src/plan/types'
import { formatQuantity } from '../../../src/plan/units'
import { study } from '../../../src/study/study'
import { samplePlan } from './made'

const SHIFT = 0.3048

const plan = samplePlan()
const [line] = plan.lines
const moved: Plan = {
  ...plan,
  lines: [
    {
      ...line!,
      stanchions: line!.stanchions.map((s, i) => (i === 1 ? { ...s, station: s.station + SHIFT } : s)),
    },
    ...plan.lines.slice(1),
  ],
}
const studied = (p: Plan) => ({ plan: p, results: study(p, { withoutTime: true }).results })
const [before, after] = [studied(plan), studied(moved)]
const comparison = comparePlans(before, after)
const size = { width: 500, height: 120, theme: paperTheme }

describe('two plans side by side', () => {
  it('says both values of every governing number that differs', () => {
    const rows = governingRows(comparison, moved, 'us')
    expect(rows.length).toBe(comparison.governing.length)
    expect(rows.length).toBeGreaterThan(0)
    comparison.governing.forEach((g, i) => {
      const [a, b] = [g.before, g.after].map((v) => formatQuantity(v, g.unit, 'us'))
      expect(rows[i]!.before).toBe(a)
      // Two that read the same would look as if nothing had changed.
      expect(rows[i]!.after).toBe(a === b ? `${b} (less apart than is printed)` : b)
    })
  })

  it('gives every changed finding a row of its own', () => {
    const rows = findingRows(comparison, moved, 'us')
    expect(new Set(rows.map((r) => r.key)).size).toBe(comparison.findings.length)
  })

  it('draws both tapes over the same stations, so that a stanchion stands as far aside as it moved', () => {
    const [pair] = tapePairs(before, after, comparison, size)
    const at = (which: 'before' | 'after'): number => {
      const { view } = pair![which]
      return view.scaleX
    }
    expect(at('before')).toBe(at('after'))
    const marked = (which: 'before' | 'after') =>
      pair![which].marks.flatMap((m) =>
        m.kind === 'path' && m.ref === `stanchion:${line!.stanchions[1]!.id}` ? [m.points[0]![0]] : [],
      )
    expect(marked('after')[0]! - marked('before')[0]!).toBeCloseTo(SHIFT, 9)
    expect(svgText(pair!.after.picture)).not.toMatch(/NaN|undefined/)
  })

  it('joins a moved stanchion from its old station to its new one and says how far that is', () => {
    const [pair] = tapePairs(before, after, comparison, size)
    const [id, was] = [line!.stanchions[1]!.id, line!.stanchions[1]!.station]
    expect(pair!.joins).toEqual([
      { ref: `stanchion:${id}`, from: was, to: was + SHIFT, text: `${id} moved 1 ft` },
    ])
    const text = svgText(pair!.picture)
    expect(text).not.toMatch(/NaN|undefined/)
    expect(text.indexOf('>Before<')).toBeGreaterThan(0)
    expect(text.indexOf('>Before<')).toBeLessThan(text.indexOf('>After<'))
    expect(text).toContain(`>${id} moved 1 ft<`)
    // The join runs from the upper edge of its band to the lower one, at both stations.
    const { view } = pair!.before
    const [x0, x1] = [was, was + SHIFT].map((s) => Math.round((s - view.left) * view.scaleX * 1000) / 1000)
    expect(text).toMatch(new RegExp(`d="M${x0} 0L${x1} `))
  })

  it('marks a stanchion that only one plan has as new or gone', () => {
    const less = {
      ...plan,
      lines: plan.lines.map((l) => ({ ...l, stanchions: l.stanchions.filter((_, i) => i !== 1) })),
    }
    const fewer = studied(less)
    const joins = (a: typeof before, b: typeof before) =>
      tapePairs(a, b, comparePlans(a, b), size).flatMap((p) => p.joins.map((j) => j.text))
    const { id } = line!.stanchions[1]!
    expect(joins(fewer, before)).toEqual([`${id} new`])
    expect(joins(before, fewer)).toEqual([`${id} gone`])
  })

  it('draws none where nothing of a line differs', () => {
    expect(tapePairs(before, before, comparePlans(before, before), size)).toEqual([])
  })
})
