/** The crew sheet of one line: what a stranger needs to put it up with a tape, a marker and a torque wrench. */
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces'
import { tape } from '../../drawings/tape'
import { paperTheme } from '../../drawings/theme'
import { approvalState } from '../../plan/records/log'
import { dayOf, type HandoverInput, type LineFile, shortHash } from '../input'
import type { Letters } from '../pdf/letters'
import { drawing, framed, inner, type Sheet, say, sheetOf } from '../pdf/paper'
import type { Words } from '../words'
import { belowList, crewList, neededList, rescueText } from './around'
import { crewFacts } from './facts'
import { reader } from './lengths'
import { asBuiltBlock, placesTable, startBlock, tieBackTable } from './places'
import { figures, ropePicture } from './rope'
import { checkList, stepList } from './work'

/** Text sizes, points: the largest with which a sheet fits on two pages is taken, else the least. */
export const SHEET_SIZES = [10.5, 9.75, 9, 8.6] as const

/** The document for one line in one language. */
export function crewSheet(
  input: HandoverInput,
  file: LineFile,
  words: Words,
  letters: Letters,
  size: number = SHEET_SIZES.at(-1)!,
): TDocumentDefinitions {
  const sheet = { ...sheetOf(input.plan.units, true), margin: { left: 28, top: 38, right: 28, bottom: 36 } }
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
    size,
  }
  const frame = {
    sheet,
    title: `${words.sheet.title}: ${file.line.name}`,
    head: [words.sheet.line(file.line.name), `${words.sheet.title}; ${plan.title}`] as [string, string],
    headSize: 15,
    foot: [
      words.caution,
      `${words.sheet.plan}: ${plan.title}; ${words.sheet.hash}: ${shortHash(hash)}${input.revision ? ` (${input.revision})` : ''}; ${words.sheet.printed}: ${dayOf(input.madeAt)}`,
    ],
    page: words.sheet.page,
    madeAt: input.madeAt,
    size: context.size,
    lineHeight: 1.04,
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
  /** Text size, points. */
  size: number
}

function sheetContent(c: SheetContext): Content[] {
  const { words: w, letters } = c
  const checks = checkList(c)
  const content: Content[] = [
    titleBlock(c),
    ...warnings(c),
    tapeBlock(c),
    ...startBlock(c),
    head(c, w.sheet.places),
    ...placesTable(c),
    { stack: [head(c, w.sheet.tieBacks), tieBackTable(c)], unbreakable: c.facts.tieBacks.length < 8 },
    neededList(c),
    crewList(c),
    belowList(c),
    rescueText(c),
    { stack: [head(c, w.sheet.ropeAndTension), ...ropePicture(c)], unbreakable: true },
    figures(c),
    asBuiltBlock(c),
    snaking([
      head(c, w.sheet.order),
      ...stepList(c),
      { stack: [head(c, w.sheet.before), ...checks.slice(0, 1)], unbreakable: true },
      ...checks.slice(1),
    ]),
  ]
  const lost = letters.missing()
  if (lost.length > 0) content.push(say(letters, w.sheet.missingLetters(codePoints(lost))))
  return content
}

const head = (c: SheetContext, text: string): Content => ({
  ...say(c.letters, text, { bold: true, size: 11 }),
  margin: [0, 3, 0, 1],
})

/** Newspaper columns: the first holds all, the others take what runs over. */
const snaking = (stack: Content[]): Content => ({
  columns: [
    { stack, width: '*' },
    { text: '', width: '*' },
    { text: '', width: '*' },
  ],
  columnGap: 16,
  snakingColumns: true,
})

/** Letters that cannot be printed are named by their numbers. */
export const codePoints = (list: string[]): string =>
  list.map((c) => `U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`).join(', ')

/** Girder and site; the line's own name stands at the head of the page, and here too where it is long. */
function titleBlock({ words: w, letters, input, file, facts }: SheetContext): Content {
  const where = [input.plan.title, input.plan.site].filter(Boolean).join(', ')
  const name = file.line.name.length > 40 ? `${w.sheet.line(file.line.name)}; ` : ''
  return say(letters, `${name}${w.sheet.girder(facts.girder)}; ${where}`, {
    bold: true,
    size: 10.5,
    room: 60,
  })
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
function failingFindings(input: HandoverInput, file: LineFile): number {
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
  const { plan } = c.input
  const size = { width: inner(c.sheet).width, height: 78 }
  const made = tape(
    {
      plan,
      line: c.file.line,
      // The room is for the planner; without it the line itself is drawn larger.
      results: null,
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
