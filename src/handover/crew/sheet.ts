/** The crew sheet of one line: what a stranger needs to put it up with a tape, a marker and a torque wrench. */
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces'
import { tape } from '../../drawings/tape'
import { paperTheme } from '../../drawings/theme'
import { approvalState } from '../../plan/records/log'
import { dayOf, type HandoverInput, type LineFile, shortHash } from '../input'
import type { Letters } from '../pdf/letters'
import { drawing, framed, heading, inner, type Sheet, say, sheetOf } from '../pdf/paper'
import type { Words } from '../words'
import { crewFacts } from './facts'
import { reader } from './lengths'
import { asBuiltTable, placesTable, startBlock, tieBackTable } from './places'
import { ropeBlock, temperatureTable } from './rope'
import { belowTable, checkList, crewTable, stepList } from './work'

const TEXT_SIZE = 9.5

/** The document for one line in one language. */
export function crewSheet(
  input: HandoverInput,
  file: LineFile,
  words: Words,
  letters: Letters,
): TDocumentDefinitions {
  const sheet = sheetOf(input.plan.units)
  const { plan, study } = input
  const hash = study.results.planHash
  const context = {
    input,
    file,
    words,
    letters,
    facts: crewFacts(plan, file),
    read: reader(words, plan.units),
    sheet,
  }
  const frame = {
    sheet,
    title: `${words.sheet.title}: ${file.line.name}`,
    head: [`${words.sheet.title}: ${file.line.name}`, plan.title] as [string, string],
    foot: [
      words.caution,
      `${words.sheet.plan}: ${plan.title}; ${words.sheet.hash}: ${shortHash(hash)}${input.revision ? ` (${input.revision})` : ''}; ${words.sheet.printed}: ${dayOf(input.madeAt)}`,
    ],
    page: words.sheet.page,
    madeAt: input.madeAt,
    size: TEXT_SIZE,
  }
  return framed(letters, frame, sheetContent(context))
}

export interface SheetContext {
  input: HandoverInput
  file: LineFile
  words: Words
  letters: Letters
  facts: ReturnType<typeof crewFacts>
  read: ReturnType<typeof reader>
  sheet: Sheet
}

function sheetContent(c: SheetContext): Content[] {
  const { words: w, letters } = c
  const blocks = [
    titleBlock(c),
    ...warnings(c),
    tapeBlock(c),
    heading(letters, w.sheet.start, 2),
    ...startBlock(c),
    heading(letters, w.sheet.places, 2),
    placesTable(c),
    heading(letters, w.sheet.tieBacks, 2),
    tieBackTable(c),
    heading(letters, w.sheet.ropeAndTension, 2),
    ...ropeBlock(c),
    heading(letters, w.sheet.temperature, 2),
    ...temperatureTable(c),
    sideBySide(
      [heading(letters, w.sheet.order, 2), stepList(c)],
      [heading(letters, w.sheet.before, 2), checkList(c)],
    ),
    heading(letters, w.sheet.crew, 2),
    crewTable(c),
    heading(letters, w.sheet.below, 2),
    belowTable(c),
    heading(letters, w.sheet.asBuilt, 2),
    ...asBuiltTable(c),
  ]
  const lost = letters.missing()
  if (lost.length > 0) blocks.push(say(letters, w.sheet.missingLetters(codePoints(lost))))
  return blocks
}

const sideBySide = (left: Content[], right: Content[]): Content => ({
  columns: [
    { stack: left, width: '*' },
    { stack: right, width: '*' },
  ],
  columnGap: 16,
})

/** Letters that cannot be printed are named by their numbers. */
export const codePoints = (list: string[]): string =>
  list.map((c) => `U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`).join(', ')

function titleBlock(c: SheetContext): Content {
  const { words: w, letters, input, file, facts } = c
  const where = [input.plan.title, input.plan.site].filter(Boolean).join(', ')
  return {
    stack: [
      say(letters, w.sheet.line(file.line.name), { bold: true, size: 17 }),
      say(letters, `${w.sheet.girder(facts.girder)}; ${where}`, { bold: true, size: 11 }),
    ],
    margin: [0, 0, 0, 4],
  }
}

/** What stops the crew before it begins: no approval, a stale one, checks that fail. */
function warnings(c: SheetContext): Content[] {
  const { words: w, letters, input, file } = c
  const state = approvalState(input.plan, input.study.results.planHash)
  const texts: string[] = []
  if (state.status === 'none') texts.push(w.sheet.notApproved)
  if (state.status === 'stale') texts.push(w.sheet.stale)
  const failing = failingFindings(input, file)
  if (failing > 0) texts.push(w.sheet.failing(failing))
  const boxes = texts.length > 0 ? [warningBox(letters, texts.join(' '))] : []
  if (state.status !== 'current' || !state.record) return boxes
  const { by, at } = state.record
  return [...boxes, say(letters, w.sheet.approvedBy(by, dayOf(at)))]
}

const warningBox = (letters: Letters, text: string): Content => ({
  table: { widths: ['*'], body: [[say(letters, text, { bold: true })]] },
  layout: {
    hLineWidth: () => 1.6,
    vLineWidth: () => 1.6,
    paddingLeft: () => 6,
    paddingTop: () => 4,
    paddingBottom: () => 4,
  },
  margin: [0, 2, 0, 4],
})

/** Findings that fail and belong to this line or to anything on it. */
export function failingFindings(input: HandoverInput, file: LineFile): number {
  const own = new Set([
    file.line.id,
    ...file.line.stanchions.map((s) => s.id),
    ...file.line.tieBacks.map((t) => t.id),
    ...file.study.input.workers.map((w) => w.worker.id),
  ])
  const obstacles = new Set(
    input.study.results.obstacles.filter((o) => o.line === file.line.id).map((o) => o.id),
  )
  return input.study.results.findings.filter(
    (f) => f.status === 'fail' && (f.line === file.line.id || own.has(f.subject) || obstacles.has(f.subject)),
  ).length
}

function tapeBlock(c: SheetContext): Content {
  const { plan, study } = c.input
  const size = { width: inner(c.sheet).width, height: 118 }
  const made = tape(
    {
      plan,
      line: c.file.line,
      results: study.results,
      rope: { installedRope: c.file.detail.installedRope, saggedRope: [] },
      units: plan.units,
      ...(c.input.meshes ? { meshes: c.input.meshes } : {}),
      words: c.words.drawing,
      startName: c.words.sheet.startEnd,
    },
    { ...size, theme: paperTheme },
  )
  return drawing(made.picture, c.letters)
}
