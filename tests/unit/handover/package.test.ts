import { beforeAll, describe, expect, it } from 'vitest'
import { comparePlans } from '../../../src/handover/compare'
import { calculationPackage } from '../../../src/handover/package'
import { comparisonChapter } from '../../../src/handover/package/comparison'
import { chapterOf } from '../../../src/handover/package/context'
import { CAUTION, NOT_CHECKED } from '../../../src/handover/package/cover'
import { explainedFindings } from '../../../src/handover/package/findings'
import { letters } from '../../../src/handover/pdf/letters'
import { bytesOf, edgesOf, hasPoppler, inputOf, type ReadPdf, readBytes, samplePlan } from './made'
import { numbersStand } from './numbers-stand'

describe.skipIf(!hasPoppler)('the calculation package, read back as any reader would', () => {
  const plan = samplePlan()
  const input = inputOf({
    ...plan,
    records: [
      ...(plan.records ?? []),
      { id: 'R90', kind: 'approval', at: '2026-03-01T08:00:00Z', by: 'M. Sample', planHash: '0'.repeat(64) },
    ],
  })
  const { results } = input.study
  let read: ReadPdf
  let edges: ReturnType<typeof edgesOf>

  beforeAll(async () => {
    const before = { plan: { ...plan, title: 'An earlier state' }, results }
    const more = (c: Parameters<typeof comparisonChapter>[0]) =>
      comparisonChapter(c, before, comparePlans(before, { plan, results }))
    const bytes = await bytesOf(calculationPackage(input, letters(input.fonts), { more }))
    read = readBytes(bytes)
    edges = edgesOf(bytes)
  })

  it('carries hash, revision, caution and page number on every page', () => {
    expect(read.pages.length).toBeGreaterThan(5)
    read.pages.forEach((page, i) => {
      expect(page).toContain(`revision C; plan hash ${results.planHash.slice(0, 12)}`)
      expect(page).toContain(`Page ${i + 1} of ${read.pages.length}`)
      expect(page).toContain(CAUTION)
    })
    expect(read.text).toContain(results.planHash)
  })

  it('says what was not checked', () => {
    for (const text of NOT_CHECKED) expect(read.text).toContain(text)
  })

  it('leaves no page empty, and nothing hangs over an edge', () => {
    const least = read.pages.map((p) => p.length).sort((a, b) => a - b)[0]!
    // Head and foot alone are some 250 letters.
    expect(least).toBeGreaterThan(350)
    expect(edges.left).toBeGreaterThan(39)
    expect(edges.right).toBeGreaterThan(39)
  })

  it('has no room kept below what ends a page, which could run over to one of its own', () => {
    const blocks = calculationPackage(input, letters(input.fonts)).content as {
      pageBreak?: string
      margin?: number[]
    }[]
    const last = blocks.filter((_, i) => blocks[i + 1]?.pageBreak === 'before')
    expect(last.length).toBeGreaterThan(5)
    for (const { margin } of last) expect(margin?.[3] ?? 0).toBe(0)
  })

  it('shows of every line what adds up to the clearance', () => {
    for (const line of plan.lines) {
      const at = read.text.lastIndexOf(`What adds up to the clearance: ${line.name}`)
      expect(at).toBeGreaterThan(0)
      for (const part of ['free fall', 'line drop', 'harness stretch', 'margin below']) {
        expect(read.text.slice(at, at + 600)).toContain(part)
      }
    }
  })

  it('works each number out once in a sum, and points back to it after', () => {
    const sum = read.text.slice(
      read.text.indexOf('Tie-back strength: '),
      read.text.indexOf('Loop strength: '),
    )
    expect(sum.split('K = ks + sum of k')).toHaveLength(2)
    expect(sum).toContain('as worked out above')
  })

  it('says how large each fall room is and all of them together, in both systems', () => {
    const table = read.text.slice(read.text.lastIndexOf('How large the fall rooms are')).slice(0, 1500)
    const rooms = [...(results.rooms?.lines ?? []), results.rooms?.plan]
    expect(rooms.length).toBe(plan.lines.length + 1)
    for (const r of rooms) {
      // 1 m3 is 35.3147 ft3, 1 m2 is 10.7639 ft2 (NIST SP 811, appendix B.8).
      expect(table).toContain(`${r!.volume!.toFixed(1)} m3 (${(r!.volume! * 35.3147).toFixed(0)} ft3)`)
      expect(table).toContain(`${r!.footprint!.toFixed(1)} m2 (${(r!.footprint! * 10.7639).toFixed(0)} ft2)`)
      expect(table).toContain(r!.lowest!.map((v) => v.toFixed(2)).join(', '))
    }
    expect(table).toContain('Whole plan, overlaps counted once')
  })

  numbersStand(() => read.text, plan, results)

  it('shows an approval for another state as stale', () => {
    expect(read.pages[0]).toContain('stale: recorded by M. Sample, 2026-03-01 for another state of the plan')
  })

  it('explains what governs and whatever does not hold', () => {
    const explained = explainedFindings(chapterOf(input, letters(input.fonts)))
    expect(explained.map((f) => f.rule)).toEqual(
      expect.arrayContaining(['wire-rope-strength', 'arrest-force']),
    )
    for (const f of results.findings) if (f.status !== 'pass') expect(explained).toContain(f)
    expect(read.text).toContain('How the governing numbers came about')
  })

  it('repeats the heads of tables that run on', () => {
    const some = read.pages.filter((p) => p.includes('What, where Value Limit Margin In words Source'))
    expect(some.length).toBeGreaterThan(1)
  })

  it('names every part and limit with its source', () => {
    for (const part of plan.parts) {
      expect(read.text).toContain(part.name)
      expect(read.text).toContain(part.source)
    }
    for (const source of Object.values(plan.basis.sources)) expect(read.text).toContain(source)
  })

  it('quotes the published comparison, the caution on suspension, and the other plan', () => {
    expect(read.text).toContain('overestimated the tension in most cases, by at most 17 %')
    expect(read.text).toContain('HSE first-aid advice, 2008')
    expect(read.text).toContain('Compared with An earlier state')
  })

  it('embeds every font', () => {
    expect(read.fonts.length).toBeGreaterThan(0)
    for (const font of read.fonts) expect(font.embedded, font.name).toBe(true)
  })

  it('never calls a state safe, and shows no value that is no value', () => {
    expect(read.text).not.toMatch(/NaN|undefined|\[object|Infinity/)
    expect(read.text).not.toMatch(/\b(safe|compliant|OK)\b/)
  })
})
