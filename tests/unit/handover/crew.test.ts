import jsQR from 'jsqr'
import { describe, expect, it } from 'vitest'
import type { SvgElement } from '../../../src/drawings/svg'
import { loopNumber } from '../../../src/geometry/loops'
import { crewSheetBytes } from '../../../src/handover/crew/bytes'
import { crewFacts } from '../../../src/handover/crew/facts'
import { crewSheet } from '../../../src/handover/crew/sheet'
import { tags, tagText } from '../../../src/handover/crew/tags'
import { qrPicture } from '../../../src/handover/files/qr'
import { lineFiles } from '../../../src/handover/input'
import { pageCount } from '../../../src/handover/pdf/engine'
import { letters } from '../../../src/handover/pdf/letters'
import { languages, wordsOf } from '../../../src/handover/words'
import type { Plan } from '../../../src/plan/types'
import { formatFeetInches, formatMillimetres } from '../../../src/plan/units'
import { hasPoppler, inputOf, readBack, readBytes, samplePlan } from './made'

const plan = samplePlan()
const input = inputOf(plan, false)
const file = lineFiles(input)[0]!
const facts = crewFacts(plan, file)

describe('what a crew is told', () => {
  it('counts loops from 1 at the start, and says between which the bracket stands', () => {
    const row = plan.girders.find((g) => g.id === file.line.girder)!.loops[0]!
    for (const place of facts.places) {
      const before = row.first + (place.before! - 1) * row.spacing
      const after = row.first + (place.after! - 1) * row.spacing
      expect(before).toBeLessThanOrEqual(place.station + 1e-9)
      expect(after).toBeGreaterThanOrEqual(place.station - 1e-9)
      expect(before + place.past!).toBeCloseTo(place.station, 9)
    }
  })

  it('names the loops of the tie-backs by the numbers of the plan', () => {
    facts.tieBacks.forEach((t, i) => {
      const inPlan = file.line.tieBacks.find((x) => x.id === t.id)!
      expect([t.strapLoop, t.tensionerLoop], String(i)).toEqual([
        loopNumber(inPlan.strapLoop.index),
        loopNumber(inPlan.tensionerLoop.index),
      ])
      const part = plan.parts.find((p) => p.id === inPlan.part)
      const legs = (t.legs[0] ?? 0) + (t.legs[1] ?? 0)
      expect(part?.kind === 'tie-back' && t.needed! - part.wrapLength).toBeCloseTo(legs, 9)
    })
  })

  it('cuts the rope longer than the mark by the tail, and marks it shorter than it will be by its stretch', () => {
    const { rope } = facts
    expect(rope.cut! - rope.mark!).toBeCloseTo(rope.tail, 12)
    const { takeUp } = file.study.installed
    expect(file.results.installed.wireRopeLength! - rope.mark!).toBeCloseTo(takeUp!.constructional, 12)
  })

  it('puts clamp and tensioner at opposite ends, the tensioner with the absorber', () => {
    const ends = [facts.places[0]!.id, facts.places.at(-1)!.id]
    const [start, end] = file.line.absorberAt === 'start' ? ends : [...ends].reverse()
    expect(facts.rope.tensionerAt).toBe(start)
    expect(facts.rope.clampAt).toBe(end)
  })

  it('tells the nominal tension at the install temperature, less when warmer, more when colder', () => {
    const at = (t: number) => facts.temperatures.find((e) => e.temperature === t)!.tension!
    const { low, high } = file.line.serviceTemperature
    expect(at(file.line.installTemperature)).toBeCloseTo(file.line.pretension, 3)
    expect(at(high)).toBeLessThan(file.line.pretension)
    expect(at(low)).toBeGreaterThan(file.line.pretension)
  })
})

describe.skipIf(!hasPoppler)('the crew sheet, read back', () => {
  it.each(languages)('says stations, loops, rope and torque in %s', async (language) => {
    const words = wordsOf(language)
    const read = await readBack(crewSheet(input, file, words, letters(input.fonts)))
    for (const place of facts.places) {
      const feet = formatFeetInches(place.station, 8)
        .replace(' ft', ` ${words.feet}`)
        .replace(/ in$/, ` ${words.inches}`)
      // One row says both: the unit of the second stands in the head of its column.
      const millimetres = formatMillimetres(place.station).replace(' mm', '')
      expect(read.text).toContain(`${feet} ${millimetres} `)
    }
    expect(read.text).toContain(formatMillimetres(facts.rope.mark!))
    expect(read.text).toContain(words.rope.torqueText(35, 47))
    expect(read.text).toContain(words.steps.protect)
    expect(read.text).toContain(words.checks.afterFall)
    expect(read.text).toContain(words.sheet.startEnd)
    for (const page of read.pages) expect(page).toContain(words.caution.slice(0, 40))
    expect(read.text).not.toMatch(/NaN|undefined|\[object/)
    for (const font of read.fonts) expect(font.embedded, font.name).toBe(true)
  })

  it('prints names in Greek, Cyrillic, Hebrew and Arabic, and boxes for letters that no font has', async () => {
    const named: Plan = {
      ...plan,
      title: 'Γέφυρα Мост גשר جسر 橋',
      lines: plan.lines.map((l) => ({ ...l, name: `Линия ${'длинная '.repeat(40)}` })),
    }
    // Names change nothing of what was computed.
    const other = { ...input, plan: named }
    const line = { ...file, line: named.lines[0]! }
    const read = await readBack(crewSheet(other, line, wordsOf('en'), letters(other.fonts)))
    expect(read.text).toContain('Линия длинная длинная')
    expect(read.text).toContain('Γέφυρα Мост')
    expect(read.text).toContain('U+6A4B')
    expect(read.text).toContain('□')
  })

  it('tells a missing approval and failing checks before anything else', async () => {
    const bad = inputOf({ ...samplePlan('much-to-put-right'), records: [] }, false)
    const read = await readBack(crewSheet(bad, lineFiles(bad)[0]!, wordsOf('en'), letters(bad.fonts)))
    expect(read.pages[0]).toContain('No approval is recorded for this plan. Do not use the line.')
    expect(read.pages[0]).toMatch(/\d+ checks of this line fail/)
  })
})

/** The line with more stanchions in the same places of its ends. */
const withStanchions = (count: number): Plan => {
  const [line, ...others] = plan.lines
  const [first, second, last] = [line!.stanchions[0]!, line!.stanchions[1]!, line!.stanchions.at(-1)!]
  const step = (last.station - first.station) / (count - 1)
  const stanchions = Array.from({ length: count }, (_, i) =>
    i === 0 ? first : i === count - 1 ? last : { ...second, id: `M${i}`, station: first.station + step * i },
  )
  return { ...plan, lines: [{ ...line!, stanchions }, ...others] }
}

/** Of a line that runs on anyway one worker is studied: every fall of every span takes its time. */
const oneWorker = (p: Plan): Plan => ({ ...p, workers: p.workers.slice(0, 1) })

const inputs = new Map([
  [4, input],
  [12, inputOf(withStanchions(12), false)],
  [40, inputOf(oneWorker(withStanchions(40)), false)],
])

describe.skipIf(!hasPoppler)('on the two sides of one leaf', () => {
  it.each(languages)(
    'stands a line of 4 and one of 12 stanchions in %s; 40 run on, heads repeated',
    async (l) => {
      for (const [count, most] of [
        [4, 2],
        [12, 2],
        [40, 4],
      ] as const) {
        const made = inputs.get(count)!
        const bytes = await crewSheetBytes(made, lineFiles(made)[0]!, wordsOf(l))
        const read = await readBytes(bytes)
        expect(read.pages.length, `${count} stanchions`).toBeLessThanOrEqual(most)
        expect(pageCount(bytes)).toBe(read.pages.length)
        if (count < 40) continue
        const heads = read.pages.filter((p) => p.includes(wordsOf(l).table.betweenLoops.split(' ')[0]!))
        expect(heads.length).toBeGreaterThan(1)
        for (let i = 1; i < 39; i++) expect(read.text).toContain(`M${i} `)
      }
    },
  )
})

describe('tags', () => {
  it('carry a code that reads as title, line and hash', () => {
    const text = tagText(input, file)
    expect(decode(qrPicture(text, 110))).toBe(text)
    expect(decode(qrPicture('Мост 橋\nL1', 110))).toBe('Мост 橋\nL1')
  })

  it.skipIf(!hasPoppler)('say line, people, tension and out of service', async () => {
    const read = await readBack(tags(input, wordsOf('en'), letters(input.fonts)))
    expect(read.text).toContain(file.line.name)
    // Two of them on each sheet, for one is soon lost.
    expect(read.text.match(/Out of service/g)).toHaveLength(2 * plan.lines.length)
    expect(read.text).toContain('Date of last inspection')
  })
})

/** Paints the code's squares on a raster and reads it with an independent reader. */
function decode(picture: SvgElement): string | undefined {
  const scale = 6
  const size = Number(picture.attributes.width) * scale
  const pixels = new Uint8ClampedArray(size * size * 4).fill(255)
  const d = String((picture.children[0] as SvgElement).attributes.d)
  for (const square of d.split('Z').filter(Boolean)) {
    const n = square.match(/-?[\d.]+/g)!.map(Number)
    const [x0, y0, x1, y1] = [n[0]!, n[1]!, n[4]!, n[5]!].map((v) => Math.round(v * scale)) as [
      number,
      number,
      number,
      number,
    ]
    for (let y = y0; y < y1; y++) {
      for (let x = x0; x < x1; x++) pixels.fill(0, (y * size + x) * 4, (y * size + x) * 4 + 3)
    }
  }
  return jsQR(pixels, size, size)?.data
}
