/** Tags to print, cut out and hang: one that names the line, one for inspection dates, one that takes it out of service. */
import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces'
import { qrPicture } from '../files/qr'
import { dayOf, type HandoverInput, type LineFile, lineFiles, shortHash } from '../input'
import type { Letters } from '../pdf/letters'
import { drawing, framed, inner, say, sheetOf, table } from '../pdf/paper'
import type { Words } from '../words'
import { reader } from './lengths'

/** What the code on a tag says: enough to find the plan again and to see whether it is the same. */
export const tagText = (input: HandoverInput, file: LineFile): string =>
  `${input.plan.title}\n${file.line.name}\n${input.study.results.planHash}`

export function tags(input: HandoverInput, words: Words, letters: Letters): TDocumentDefinitions {
  const sheet = sheetOf(input.plan.units)
  const w = words.tag
  const frame = {
    sheet,
    title: `${w.title}: ${input.plan.title}`,
    head: [w.cut, input.plan.title] as [string, string],
    foot: [
      words.caution,
      `${words.sheet.hash}: ${shortHash(input.study.results.planHash)}; ${dayOf(input.madeAt)}`,
    ],
    page: words.sheet.page,
    madeAt: input.madeAt,
    size: 9,
  }
  const width = inner(sheet).width / 2
  const content = lineFiles(input).flatMap((file, i) => tagsOfLine(input, file, words, letters, width, i > 0))
  return framed(letters, frame, content)
}

function tagsOfLine(
  input: HandoverInput,
  file: LineFile,
  words: Words,
  letters: Letters,
  width: number,
  newPage: boolean,
): Content[] {
  // Each cell is made for itself: the engine places a block once, and leaves it out where it meets it again.
  const body: TableCell[][] = [
    [identity(input, file, words, letters), inspections(file, words, letters)],
    [outOfService(file, words, letters), outOfService(file, words, letters)],
  ]
  return [
    {
      table: { widths: [width - 12, width - 12], body, dontBreakRows: true },
      layout: {
        hLineWidth: () => 0.8,
        vLineWidth: () => 0.8,
        hLineStyle: () => ({ dash: { length: 4, space: 3 } }),
        vLineStyle: () => ({ dash: { length: 4, space: 3 } }),
        paddingTop: () => 8,
        paddingBottom: () => 8,
      },
      ...(newPage ? { pageBreak: 'before' as const } : {}),
    },
  ]
}

/** A hole to hang it by. */
const hole = (): Content => ({
  canvas: [{ type: 'ellipse', x: 6, y: 6, r1: 6, r2: 6, lineWidth: 0.8 }],
  alignment: 'center',
})

function identity(input: HandoverInput, file: LineFile, words: Words, letters: Letters): Content {
  const w = words.tag
  const read = reader(words, input.plan.units)
  const { line } = file
  return {
    stack: [
      hole(),
      say(letters, w.title, { bold: true, size: 15 }),
      say(letters, `${w.line}: ${line.name}`, { bold: true, size: 13 }),
      say(letters, input.plan.title),
      say(letters, w.workers(line.workersAtOnce), { bold: true, size: 12 }),
      say(
        letters,
        `${w.tension}: ${read.both(line.pretension, 'N')} (${read.both(line.installTemperature, 'degC')})`,
      ),
      drawing(qrPicture(tagText(input, file), 110), letters),
      say(letters, shortHash(input.study.results.planHash), { size: 8 }),
    ],
  }
}

function inspections(file: LineFile, words: Words, letters: Letters): Content {
  const w = words.tag
  return {
    stack: [
      hole(),
      say(letters, w.inspected, { bold: true, size: 13 }),
      say(letters, file.line.name),
      say(letters, w.doNotUse, { bold: true }),
      table(letters, {
        head: [w.date, w.by, w.next],
        rows: Array.from({ length: 8 }, () => ['', '', '']),
        widths: [60, '*', 60],
        boxed: true,
        rowHeight: 16,
      }),
    ],
  }
}

function outOfService(file: LineFile, words: Words, letters: Letters): Content {
  const w = words.tag
  return {
    stack: [
      hole(),
      say(letters, w.outOfService, { bold: true, size: 22 }),
      say(letters, file.line.name, { bold: true, size: 13 }),
      table(letters, {
        head: [w.reason],
        rows: [[''], [''], ['']],
        widths: ['*'],
        boxed: true,
        rowHeight: 20,
      }),
    ],
  }
}
