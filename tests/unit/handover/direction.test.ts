import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { paperFonts } from '../../../src/cli/paper-fonts'
import { el, svgRoot } from '../../../src/drawings/svg'
import { pdfBytes } from '../../../src/handover/pdf/engine'
import { letters } from '../../../src/handover/pdf/letters'
import { drawing, framed, say, sheetOf } from '../../../src/handover/pdf/paper'
import { turnedParts } from '../../../src/handover/pdf/turned-parts'
import { hasPoppler } from './made'

const fonts = paperFonts()
/** "Lifeline on girder 2" and "Bank of the stream" in Arabic; "Beam 2 (north)" and "Scaffold tower" in Hebrew. */
const LINE = 'خط الحياة على العارضة 2'
const BANK = 'ضفة الجدول'
const BEAM = 'קורה 2 (צפון)'
const TOWER = 'מגדל פיגומים'

/** The text of each run as it lies on the line from left to right. */
const laid = (text: string, names: string[] = []): string[] =>
  letters(fonts, names)
    .runs(text, 100)
    .map((r) => r.text.replace(/\u00a0/g, ' '))

describe('which parts of a text run from right to left', () => {
  const partsOf = (text: string, names: string[] = []) =>
    turnedParts(text, names).map(([a, b]) => text.slice(a, b))

  it.each([
    ['a name alone, with the number that ends it', LINE, [LINE]],
    ['a name with a bracket', BEAM, [BEAM]],
    ['a name before what is measured of it', `${BANK}: 7 ft 3 3/8 in (2,218 mm)`, [BANK]],
    ['two such names', `${BANK}: 7 ft 3 in; ${TOWER}: 2 5/8 in (68 mm)`, [BANK, TOWER]],
    ['two names with bare numbers', `Gaps: ${BANK}: 7; ${TOWER}: 8`, [BANK, TOWER]],
    ['a name whose number ends it, in a sentence', `Line ${LINE}: fails`, [LINE]],
    ['a name before a measure without a colon', `${BANK} 22 ft 11 5/8 in below`, [BANK]],
    ['nothing of a text from left to right', 'Girder 2, 7 ft 3 3/8 in', []],
  ])('%s', (_, text, parts) => expect(partsOf(text)).toEqual(parts))

  it('keeps the names of a plan whole in a sentence', () => {
    const site = `وادي L1 على العارضة 2`
    expect(partsOf(`Girder: ${BEAM}; ${LINE}, ${site}`, [site, LINE, BEAM])).toEqual([BEAM, LINE, site])
  })
})

describe('runs in their order on the line', () => {
  it('lays what is read first at the right', () => {
    expect(laid(LINE)).toEqual(['2', 'خط الحياة على العارضة '])
    // The bracket that opens stands at the right of what it holds, and so is drawn as the one that closes.
    expect(laid(BEAM)).toEqual([' )צפון(', '2', 'קורה '])
  })

  it('leaves figures where a sentence has them', () => {
    expect(laid(`${BANK}: 7 ft 3 3/8 in`)).toEqual([BANK, ': 7 ft 3 3/8 in'])
    expect(laid(`Fall of ${TOWER} in span S1 to S2`)).toEqual(['Fall of ', TOWER, ' in span S1 to S2'])
  })

  it('breaks a long text where it is read, not where it lies', () => {
    const words = Array.from({ length: 12 }, (_, i) => `${TOWER.slice(0, 4)}${'אבגדהוזחטיכל'[i]}`)
    const runs = letters(fonts).runs(words.join(' '), 12)
    const lines = runs
      .map((r) => r.text)
      .join('')
      .split('\n')
    expect(lines.length).toBeGreaterThan(3)
    expect(lines.join(' ').replace(/\u00a0/g, ' ')).toBe(words.join(' '))
  })

  it('marks what no font has, and says which letter that was', () => {
    const set = letters(fonts)
    const [first] = set.runs('梁 A')
    expect(first!.text).toBe('\u25a1 A')
    expect(set.missing()).toEqual(['梁'])
  })
})

interface Word {
  text: string
  left: number
  top: number
}

/** Words with their places on the page, as another program reads them. */
async function wordsOf(texts: string[], label: string): Promise<Word[]> {
  const set = letters(fonts, [LINE, BANK, BEAM, TOWER])
  const text = el('text', { x: 200, y: 12, 'font-size': 9, 'text-anchor': 'middle' }, label)
  const content = [...texts.map((t) => say(set, t)), drawing(svgRoot(400, 20, [text]), set)]
  const frame = {
    sheet: sheetOf('us'),
    title: 'Test',
    head: ['', ''] as [string, string],
    foot: [],
    page: () => '',
    madeAt: '2026-03-14',
  }
  const folder = mkdtempSync(join(tmpdir(), 'direction-'))
  try {
    writeFileSync(join(folder, 'a.pdf'), await pdfBytes(framed(set, frame, content), fonts))
    const boxes = execFileSync('pdftotext', ['-bbox', join(folder, 'a.pdf'), '-'], { encoding: 'utf8' })
    const found = boxes.matchAll(/<word xMin="([\d.]+)" yMin="([\d.]+)"[^>]*>([^<]*)</g)
    return [...found].map((m) => ({ left: Number(m[1]), top: Number(m[2]), text: m[3]! }))
  } finally {
    rmSync(folder, { recursive: true })
  }
}

describe.skipIf(!hasPoppler)('names from right to left on a page, read back', () => {
  it('stand in their order in texts and in labels of drawings, and figures beside them in theirs', async () => {
    const sentence = `${TOWER}: 7 ft 3 in, and`
    const words = await wordsOf([sentence], `${TOWER} 22 ft below`)
    const rows = [...new Set(words.map((w) => w.top))].map((top) => words.filter((w) => w.top === top))
    const [first, second] = TOWER.split(' ')
    const placeOf = (part: string, row: Word[]) => {
      const turned = [...part].reverse().join('')
      const found = row.find((w) => w.text.includes(part) || w.text.includes(turned))
      expect(found, part).toBeDefined()
      return found!.left
    }
    const inText = words.filter((w) => Math.abs(w.top - words[0]!.top) < 3)
    const inLabel = words.filter((w) => !inText.includes(w))
    expect(rows.length).toBeGreaterThan(1)
    for (const row of [inText, inLabel]) expect(placeOf(first!, row)).toBeGreaterThan(placeOf(second!, row))
    const order = (parts: string[], row: Word[]) => parts.map((p) => placeOf(p, row))
    const figures = order([first!, '7', 'ft', '3', 'in,', 'and'], inText)
    expect(figures).toEqual([...figures].sort((a, b) => a - b))
    const below = order([first!, '22', 'ft', 'below'], inLabel)
    expect(below).toEqual([...below].sort((a, b) => a - b))
  })
})
