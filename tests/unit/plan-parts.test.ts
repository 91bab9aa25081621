import { describe, expect, it } from 'vitest'
import { partLibrary } from '../../src/plan/library'
import { partKinds } from '../../src/plan/part-list/fields'
import { readParts, readPartsCsv, takeParts } from '../../src/plan/part-list/read'
import { writePartsCsv, writePartsJson } from '../../src/plan/part-list/write'
import { partSchema } from '../../src/plan/schema/parts'
import type { Part } from '../../src/plan/types'
import { sampleText } from './plan-support'

const HEAD = 'kind,id,name,source,breakingStrength (N),length (m)'
const faultsOf = (csv: string) => {
  const read = readPartsCsv(csv)
  return read.ok ? [] : read.faults
}

describe('the library', () => {
  it('holds only sound parts of every kind, each with the warning as its source', () => {
    for (const part of partLibrary) expect(partSchema.safeParse(part).error).toBeUndefined()
    expect(new Set(partLibrary.map((p) => p.kind)).size).toBe(partKinds.length)
    expect(new Set(partLibrary.map((p) => p.id)).size).toBe(partLibrary.length)
    expect(new Set(partLibrary.map((p) => p.source))).toEqual(
      new Set(["example figures: replace with your parts' documentation"]),
    )
    const types = partLibrary.flatMap((p) => (p.kind === 'connector' ? [p.type] : []))
    expect(new Set(types)).toEqual(new Set(['lanyard', 'retractable']))
  })

  it('has ropes of published strength (FAA AC 43.13-1B table 7-3)', () => {
    const rope = partLibrary.find((p) => p.id === 'rope-10')
    expect(rope?.kind === 'wire-rope' && rope.breakingStrength / 4.4482216152605).toBeCloseTo(14_400, -1)
  })
})

describe('a part list', () => {
  it('comes back from CSV and from JSON as it was', () => {
    expect(readParts(writePartsCsv(partLibrary))).toEqual({ ok: true, parts: partLibrary })
    expect(readParts(writePartsJson(partLibrary))).toEqual({ ok: true, parts: partLibrary })
  })

  it('gives what is sound in it, and tells by line what is not', () => {
    const lines = [
      'hardware,a,Shackle,a data sheet,1000,0.1',
      // Whether a thousand or one and a bit is meant, nobody knows.
      'hardware,b,Shackle,a data sheet,"1,000",0.1',
      'hardware,c,Shackle,,1000,0.1',
      'hardware,a,Shackle again,a data sheet,2000,0.1',
    ]
    const { parts, faults } = takeParts([HEAD, ...lines].join('\n'))
    expect(parts.map((p) => [p.id, p.name])).toEqual([['a', 'Shackle']])
    expect(faults.map((f) => f.line)).toEqual([3, 4, 5])
  })

  it.each(['', '{}', '[1]', 'a,b\n1,2', '[{"kind":"wire-rope"}]', '{"__proto__":1}'])(
    'gives nothing of %j, and says why',
    (text) => {
      const { parts, faults } = takeParts(text)
      expect(parts).toEqual([])
      expect(faults.length).toBeGreaterThan(0)
    },
  )

  it('is taken out of a plan', () => {
    const read = readParts(sampleText('thin-margins'))
    expect(read.ok && read.parts.length).toBe(9)
  })

  it('keeps text that a spreadsheet would compute, quote or split', () => {
    const part: Part = {
      kind: 'hardware',
      id: '=1+1',
      name: '+cmd|\' /C calc\'!A0, "quoted"\nsecond line',
      source: '@SUM(A1)',
      breakingStrength: 1000,
      length: 0,
    }
    const csv = writePartsCsv([part])
    expect(csv).not.toMatch(/(^|,)"?[=+@]/m)
    expect(readParts(csv)).toEqual({ ok: true, parts: [part] })
  })

  it('takes figures with their own units, and plain ones in the unit of the head', () => {
    const read = readPartsCsv(
      `${HEAD}\nhardware,a,A,user,"14,400 lbf",2 3/8 in\nhardware,b,B,user,64050,0.06`,
    )
    if (!read.ok) throw new Error(JSON.stringify(read.faults))
    expect(read.parts[0]).toMatchObject({
      breakingStrength: expect.closeTo(64_054.4, 1),
      length: expect.closeTo(0.060325, 9),
    })
    expect(read.parts[1]).toMatchObject({ breakingStrength: 64_050, length: 0.06 })
  })

  it('has semicolons where a spreadsheet of another country wrote it', () => {
    expect(readPartsCsv(`${HEAD.replaceAll(',', ';')}\nhardware;a;A;user;64050;0.06\n`).ok).toBe(true)
  })
})

describe('a faulty part list', () => {
  it('is refused with the line of each fault', () => {
    const faults = faultsOf(
      `${HEAD}\nhardware,a,"two\nlines",user,64050,0.06\n\nhardware,b,B,user,-1,0.06\nhardware,b,,user,12 kg,x\nchain,c,C,user,1,1\n`,
    )
    expect(faults.map((f) => [f.line, f.path])).toEqual([
      [5, '$.parts[2].breakingStrength'],
      [6, '$.parts[3].breakingStrength'],
      [6, '$.parts[3].length'],
      [6, '$.parts[3].name'],
      [7, '$.parts[4].kind'],
      [6, '$.parts[3].id'],
    ])
  })

  it.each([
    ['', /no column "kind"/],
    [HEAD, /no parts/],
    [`${HEAD},colour\n`, /"colour": no part has such a field/],
    [`${HEAD.replace('(N)', '(kN)')}\n`, /must be "breakingStrength \(N\)"/],
    [`${HEAD},kind\n`, /"kind" stands twice/],
    [`${HEAD}\nhardware,a,A,user,"1,5`, /not closed/],
    [`${HEAD}\nhardware,a,A,user,"64,05",1`, /no number; write it plainly/],
    [`${HEAD},diameter (m)\nhardware,a,A,user,1,1,0.01`, /has no diameter \(m\): leave the cell empty/],
    [`${HEAD}\nhardware,a,A,,1,1`, /source|missing/],
  ])('%j is refused', (csv, words) => {
    const faults = faultsOf(csv)
    expect(faults.map((f) => f.message).join('; ')).toMatch(words)
    expect(faults.every((f) => typeof f.line === 'number')).toBe(true)
  })

  it('as JSON is refused by path and line', () => {
    const text = writePartsJson(partLibrary).replace('"termination": 0.8', '"termination": 8')
    const read = readParts(text)
    const line =
      text.split('\n').findIndex((l) => l.includes('"termination": 8,') || l.endsWith('"termination": 8')) + 1
    expect(read.ok ? [] : read.faults).toMatchObject([{ path: '$.parts[0].termination', line }])
    expect(readParts('{"parts": 3}').ok).toBe(false)
    expect(readParts('[1, {"kind": "__proto__"}]').ok).toBe(false)
  })
})
