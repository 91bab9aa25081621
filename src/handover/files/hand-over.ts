/** Everything that is handed over, as files in memory: papers, drawings, tables, room and results. */

import { svgFile } from '../../drawings/svg'
import { comparePlans, type Studied } from '../compare'
import { crewSheetBytes } from '../crew/bytes'
import { tags } from '../crew/tags'
import { type HandoverInput, lineFiles } from '../input'
import { ownTexts } from '../own-texts'
import { calculationPackage } from '../package'
import { comparisonChapter } from '../package/comparison'
import { chapterOf } from '../package/context'
import { type LineDrawings, lineDrawings } from '../package/drawings'
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
    const svg = [
      ...(made.elevation ? [textFile(`${name}-elevation.svg`, svgFile(made.elevation.picture))] : []),
      ...(made.plan ? [textFile(`${name}-plan.svg`, svgFile(made.plan.picture))] : []),
      ...made.sections.map((s, k) => textFile(`${name}-section-${k + 1}.svg`, svgFile(s.drawing.picture))),
    ]
    return [...svg, textFile(`${name}.dxf`, dxfText(dxfParts(made, file.line.name)))]
  })
}

/** The elevation at its own coordinates, the plan below and the sections to its right: none lies on another. */
export function dxfParts(made: LineDrawings, name: string): DxfPart[] {
  const parts: DxfPart[] = []
  const low = made.elevation ? lowestOf(made.elevation.marks) : 0
  if (made.elevation) parts.push({ marks: made.elevation.marks, at: [0, 0], title: `${name}: elevation` })
  if (made.plan) parts.push({ marks: made.plan.marks, at: [0, low - 10], title: `${name}: plan` })
  const right = made.elevation ? widestOf(made.elevation.marks) : 0
  made.sections.forEach((s, i) => {
    const title = `${name}: section at ${s.station.toFixed(3)} m`
    parts.push({ marks: s.drawing.marks, at: [right + 15 + i * 25, low], title })
  })
  return parts
}

const pointsOf = (marks: LineDrawings['sections'][number]['drawing']['marks']) =>
  marks.flatMap((m) => (m.kind === 'path' ? m.points : m.kind === 'dimension' ? [m.from, m.to] : [m.at]))

const lowestOf = (marks: Parameters<typeof pointsOf>[0]): number =>
  pointsOf(marks).reduce((low, p) => Math.min(low, p[1]), Infinity)
const widestOf = (marks: Parameters<typeof pointsOf>[0]): number =>
  pointsOf(marks).reduce((high, p) => Math.max(high, p[0]), -Infinity)

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
