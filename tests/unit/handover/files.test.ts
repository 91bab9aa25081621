import DxfParser from 'dxf-parser'
import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { fallsCsv, findingsCsv, gapsCsv, stanchionsCsv } from '../../../src/handover/files/csv'
import { dxfText } from '../../../src/handover/files/dxf'
import { dxfParts } from '../../../src/handover/files/hand-over'
import { distinctNames, fileName } from '../../../src/handover/files/names'
import { lineFiles } from '../../../src/handover/input'
import { chapterOf } from '../../../src/handover/package/context'
import { lineDrawings } from '../../../src/handover/package/drawings'
import { letters } from '../../../src/handover/pdf/letters'
import { inputOf, samplePlan } from './made'

const plan = samplePlan()
const input = inputOf(plan)
const file = lineFiles(input)[0]!

const rows = (text: string): Record<string, string>[] =>
  Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data

describe('the drawing file, read back by another program', () => {
  const made = lineDrawings(chapterOf(input, letters(input.fonts)), file)
  const dxf = new DxfParser().parseSync(dxfText(dxfParts(made, 'Línea 1 橋\nnext')))!

  it('is in metres and has a layer for each kind of thing', () => {
    expect(dxf.header.$INSUNITS).toBe(6)
    expect(Object.keys(dxf.tables.layer.layers)).toEqual(
      expect.arrayContaining(['GIRDERS', 'LOOPS', 'STANCHIONS', 'TIE-BACKS', 'FALL-ROOM', 'OBSTACLES']),
    )
  })

  it('has the stanchions where the plan has them', () => {
    const girder = file.study.input.girder
    const rate = file.study.input.geometry.frame.planRate
    const shafts = dxf.entities.filter((e) => e.layer === 'STANCHIONS' && e.type === 'LWPOLYLINE')
    const xs = shafts.map((e) => (e as unknown as { vertices: { x: number; y: number }[] }).vertices)
    for (const s of file.line.stanchions) {
      const upright = xs.find(
        (v) =>
          v.length === 2 && Math.abs(v[0]!.x - v[1]!.x) < 1e-6 && Math.abs(v[0]!.x - s.station * rate) < 1e-3,
      )
      expect(upright, s.id).toBeDefined()
      expect(Math.min(...upright!.map((p) => p.y))).toBeCloseTo(
        girder.start[2] + file.study.input.geometry.frame.rise * s.station,
        3,
      )
    }
  })
})

it('has every drawing of the line in the drawing file, none on another', () => {
  const made = lineDrawings(chapterOf(input, letters(input.fonts)), file)
  const files = made.map((d) => d.file)
  expect(files).toEqual(expect.arrayContaining(['elevation', 'plan', 'section-1']))
  expect(new Set(files).size).toBe(files.length)
  const more = made.flatMap((d) => [d, { ...d, layout: `${d.layout} again`, place: 'right' as const }])
  const parts = dxfParts(more, 'L')
  expect(parts.map((p) => p.title)).toEqual(more.map((d) => `L: ${d.layout}`))
  const boxes = parts.map(({ marks, at }) => {
    const points = marks.flatMap((m) => (m.kind === 'path' ? m.points : 'at' in m ? [m.at] : []))
    const [xs, ys] = [points.map((p) => p[0] + at[0]), points.map((p) => p[1] + at[1])]
    return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), top: Math.max(...ys) }
  })
  boxes.forEach((a, i) => {
    for (const [k, b] of boxes.slice(i + 1).entries()) {
      const apart = a.right < b.left || b.right < a.left || a.top < b.low || b.top < a.low
      expect(apart, `${parts[i]?.title} and ${parts[i + 1 + k]?.title}`).toBe(true)
    }
  })
})

describe('tables', () => {
  it('have every finding with the numbers of the results', () => {
    const read = rows(findingsCsv(input))
    expect(read).toHaveLength(input.study.results.findings.length)
    for (const f of input.study.results.findings) {
      const row = read.find((r) => r.rule === f.rule && r.subject === f.subject && r.text === f.text)
      expect(row, f.rule).toBeDefined()
      expect(row!.value === '' ? null : Number(row!.value)).toBe(f.value)
    }
  })

  it('have every fall and every stanchion', () => {
    expect(rows(fallsCsv(input))).toHaveLength(input.study.results.lines.flatMap((l) => l.falls).length)
    const stanchions = rows(stanchionsCsv(input))
    expect(stanchions.map((r) => Number(r['station (m)']))).toEqual(
      plan.lines.flatMap((l) => l.stanchions.map((s) => s.station)),
    )
  })

  it('keep a name that looks like a formula a name', () => {
    const named = inputOf({
      ...plan,
      obstacles: plan.obstacles.map((o) => ({ ...o, name: '=HYPERLINK("x")' })),
    })
    expect(rows(gapsCsv(named)).some((r) => r.name === '\'=HYPERLINK("x")')).toBe(true)
  })
})

describe('names of files', () => {
  it.each([
    ['Line 1 / north', 'Line-1-north'],
    ['..', 'plan'],
    ['', 'plan'],
    ['con', 'con-file'],
    ['Línea Ωμέγα 橋', 'Línea-Ωμέγα-橋'],
    ['a\u0000b:c*d?', 'a-b-c-d'],
  ])('%j becomes %j', (from, to) => {
    expect(fileName(from)).toBe(to)
  })

  it('are short enough and tell apart what a disk would not', () => {
    expect(fileName('x'.repeat(500)).length).toBeLessThanOrEqual(60)
    expect(distinctNames(['A', 'a', 'a'])).toEqual(['A', 'a-2', 'a-3'])
  })
})
