/** Everything that is handed over, as files in memory: papers, drawings, tables, room and results. */

import type { Mark } from '../../drawings/marks'
import { svgFile } from '../../drawings/svg'
import type { Point } from '../../drawings/view'
import { comparePlans, type Studied } from '../compare'
import { crewSheetBytes } from '../crew/bytes'
import { tags } from '../crew/tags'
import { type HandoverInput, lineFiles } from '../input'
import { ownTexts } from '../own-texts'
import { calculationPackage } from '../package'
import { comparisonChapter } from '../package/comparison'
import { chapterOf } from '../package/context'
import { lineDrawings, type NamedDrawing } from '../package/drawings'
import { pdfBytes } from '../pdf/engine'
import { letters } from '../pdf/letters'
import { roomFiles } from '../room/files'
import { type Language, languages, wordsOf } from '../words'
import { fallsCsv, findingsCsv, floorCsv, gapsCsv, stanchionsCsv, tieBacksCsv } from './csv'
import { type DxfPart, dxfText } from './dxf'
import { paperKey } from './keys'
import { distinctNames, fileName } from './names'

export interface HandoverFile {
  /** With folders, as 'drawings/line-1-elevation.svg'. */
  name: string
  bytes: Uint8Array
}

export interface HandoverOptions {
  languages?: readonly Language[]
  /** Another state of the plan; a page of the package then says what changed since. */
  compareWith?: Studied
  /** Keys of the jobs that are wanted, as `paperKey` makes them; absent: all. */
  only?: readonly string[]
  progress?: (share: number, what: string) => void
  cancelled?: () => boolean
}

/** Thrown where the caller asked to stop. */
class HandoverCancelled extends Error {}

interface Job {
  key: string
  what: string
  make: () => Promise<HandoverFile[]> | HandoverFile[]
}

/** All files; nothing is written anywhere. */
export async function handOver(input: HandoverInput, options: HandoverOptions = {}): Promise<HandoverFile[]> {
  const jobs = jobsOf(input, options).filter((j) => options.only?.includes(j.key) ?? true)
  const files: HandoverFile[] = []
  for (const [i, job] of jobs.entries()) {
    if (options.cancelled?.()) throw new HandoverCancelled('the papers were not made: stopped')
    options.progress?.(i / jobs.length, job.what)
    files.push(...(await job.make()))
  }
  options.progress?.(1, 'done')
  return files
}

const textFile = (name: string, text: string): HandoverFile => ({
  name,
  bytes: new TextEncoder().encode(text),
})

function jobsOf(input: HandoverInput, options: HandoverOptions): Job[] {
  const lines = lineFiles(input)
  const names = distinctNames(lines.map((l) => fileName(l.line.name)))
  const asked = options.languages ?? languages
  const sheets = asked.flatMap((language): Job[] => [
    ...lines.map(({ line }, i) => ({
      key: paperKey.sheet(line.id, language),
      what: `crew sheet, ${wordsOf(language).name}`,
      make: () => sheetFile(input, i, names[i]!, language),
    })),
    {
      key: paperKey.tags(language),
      what: `tags, ${wordsOf(language).name}`,
      make: () => tagFile(input, language),
    },
  ])
  const results = (): HandoverFile[] => [
    textFile('results.json', `${JSON.stringify(input.study.results, null, 1)}\n`),
  ]
  return [
    { key: paperKey.package, what: 'calculation package', make: () => packageFile(input, options) },
    ...sheets,
    { key: paperKey.drawings, what: 'drawings', make: () => drawingFiles(input, names) },
    { key: paperKey.tables, what: 'tables', make: () => tableFiles(input) },
    { key: paperKey.room, what: 'fall room', make: () => roomFile(input) },
    { key: paperKey.results, what: 'results', make: results },
  ]
}

async function packageFile(input: HandoverInput, { compareWith }: HandoverOptions): Promise<HandoverFile[]> {
  const set = letters(input.fonts, ownTexts(input.plan))
  const after = { plan: input.plan, results: input.study.results }
  const more = compareWith
    ? {
        more: (c: ReturnType<typeof chapterOf>) =>
          comparisonChapter(c, compareWith, comparePlans(compareWith, after)),
      }
    : {}
  const bytes = await pdfBytes(calculationPackage(input, set, more), input.fonts)
  return [{ name: 'calculation-package.pdf', bytes }]
}

async function sheetFile(
  input: HandoverInput,
  index: number,
  name: string,
  language: Language,
): Promise<HandoverFile[]> {
  const file = lineFiles(input)[index]
  if (!file) return []
  const bytes = await crewSheetBytes(input, file, wordsOf(language))
  return [{ name: `crew-sheets/${name}-${language}.pdf`, bytes }]
}

async function tagFile(input: HandoverInput, language: Language): Promise<HandoverFile[]> {
  if (input.plan.lines.length === 0) return []
  const definition = tags(input, wordsOf(language), letters(input.fonts, ownTexts(input.plan)))
  return [{ name: `tags/tags-${language}.pdf`, bytes: await pdfBytes(definition, input.fonts) }]
}

function drawingFiles(input: HandoverInput, names: string[]): HandoverFile[] {
  const c = chapterOf(input, letters(input.fonts, ownTexts(input.plan)))
  return lineFiles(input).flatMap((file, i) => {
    const made = lineDrawings(c, file)
    const name = `drawings/${names[i]}`
    const svg = made.map((d) => textFile(`${name}-${d.file}.svg`, svgFile(d.drawing.picture)))
    return [...svg, textFile(`${name}.dxf`, dxfText(dxfParts(made, file.line.name)))]
  })
}

/** Between two drawings of one file, m. */
const APART = 10

/** The elevation at its own coordinates, the plan below and the sections to its right: none lies on another. */
export function dxfParts(made: readonly NamedDrawing[], name: string): DxfPart[] {
  const own = boxOf(made.filter((d) => d.place === 'own').flatMap((d) => d.drawing.marks))
  let { right, low } = own
  return made.map(({ drawing, layout, place }): DxfPart => {
    const box = boxOf(drawing.marks)
    const at: Record<NamedDrawing['place'], Point> = {
      own: [0, 0],
      below: [0, low - APART - box.top],
      right: [right + APART - box.left, own.low],
    }
    if (place === 'below') low += box.low - box.top - APART
    if (place === 'right') right += box.right - box.left + APART
    return { marks: drawing.marks, at: at[place], title: `${name}: ${layout}` }
  })
}

/** What the shapes and dimensions of a drawing take up, m; of none a point at 0. */
function boxOf(marks: readonly Mark[]) {
  const points = marks.flatMap((m) =>
    m.kind === 'path' ? m.points : m.kind === 'dimension' ? [m.from, m.to] : [m.at],
  )
  if (points.length === 0) return { left: 0, right: 0, low: 0, top: 0 }
  const of = (k: 0 | 1, pick: (a: number, b: number) => number): number =>
    points.map((p) => p[k]).reduce((a, b) => pick(a, b))
  return { left: of(0, Math.min), right: of(0, Math.max), low: of(1, Math.min), top: of(1, Math.max) }
}

function tableFiles(input: HandoverInput): HandoverFile[] {
  return [
    textFile('tables/findings.csv', findingsCsv(input)),
    textFile('tables/falls.csv', fallsCsv(input)),
    textFile('tables/stanchions.csv', stanchionsCsv(input)),
    textFile('tables/tie-backs.csv', tieBacksCsv(input)),
    textFile('tables/gaps.csv', gapsCsv(input)),
    textFile('tables/room-depth.csv', floorCsv(input)),
  ]
}

function roomFile(input: HandoverInput): Promise<HandoverFile[]> {
  const named = (id: string): string => input.plan.lines.find((l) => l.id === id)?.name ?? id
  return roomFiles(input.study.obstacles.rooms, named, input.solidEngine)
}
