/** The calculation package: one PDF that a qualified person can approve. */
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces'
import { codePoints } from '../crew/sheet'
import { dayOf, type HandoverInput, shortHash } from '../input'
import type { Letters } from '../pdf/letters'
import { framed, heading, say } from '../pdf/paper'
import { assumptionChapter } from './assumptions'
import { clashChapter } from './clashes'
import { type Chapter, chapterOf } from './context'
import { CAUTION, cover, governingTable, signatureBlock } from './cover'
import { drawingChapter, lineDrawings, stackChapter } from './drawings'
import { explanationChapter, findingsChapter } from './findings'
import { methodsChapter } from './methods'
import { basisChapter, partsChapter } from './parts'
import { recordsChapter } from './records'
import { rescueChapter } from './rescue'
import { sensitivityChapter } from './sensitivity'
import { lineChapter, siteChapter } from './site'

/** Further pages that a caller adds, as a comparison with another revision. */
export interface PackageOptions {
  more?: (c: Chapter) => Content[]
}

export function calculationPackage(
  input: HandoverInput,
  letters: Letters,
  options: PackageOptions = {},
): TDocumentDefinitions {
  const c = chapterOf(input, letters)
  const revision = input.revision ? `revision ${input.revision}; ` : ''
  const frame = {
    sheet: c.sheet,
    title: `Calculation package: ${input.plan.title}`,
    head: ['Calculation package', input.plan.title] as [string, string],
    foot: [
      CAUTION,
      `${revision}plan hash ${shortHash(input.study.results.planHash)}; made on ${dayOf(input.madeAt)}`,
    ],
    page: (page: number, of: number) => `Page ${page} of ${of}`,
    madeAt: input.madeAt,
  }
  return framed(letters, frame, chapters(c, options))
}

function chapters(c: Chapter, options: PackageOptions): Content[] {
  const content = [
    ...cover(c),
    ...governingTable(c),
    ...newPage(findingsChapter(c)),
    ...newPage(clashChapter(c)),
    ...newPage([
      heading(c.letters, 'Lines', 1),
      ...c.lines.flatMap((file) => [
        ...lineChapter(c, file),
        ...drawingChapter(c, file, lineDrawings(c, file)),
        ...stackChapter(c, file),
      ]),
    ]),
    ...newPage(methodsChapter(c)),
    ...newPage(explanationChapter(c)),
    ...newPage(sensitivityChapter(c)),
    ...newPage(siteChapter(c)),
    ...partsChapter(c),
    ...basisChapter(c),
    ...newPage(rescueChapter(c)),
    ...recordsChapter(c),
    ...(options.more ? newPage(options.more(c)) : []),
    ...newPage(assumptionChapter(c)),
    ...signatureBlock(c),
  ]
  const paged = content.map((block, i) => (beginsPage(content[i + 1]) ? flush(block) : block))
  const lost = c.letters.missing()
  if (lost.length === 0) return paged
  const note = `An empty box stands for a letter that the papers' fonts have no shape for: ${codePoints(lost)}. The plan file and the tables carry the names as they are.`
  return [...paged, say(c.letters, note)]
}

const beginsPage = (block: Content | undefined): boolean =>
  typeof block === 'object' && 'pageBreak' in block && block.pageBreak === 'before'

/** Without room below it: at the foot of a page that would run over to an empty one before the next chapter's. */
function flush(block: Content): Content {
  if (typeof block !== 'object' || !('margin' in block) || !Array.isArray(block.margin)) return block
  const [left, top, right] = block.margin
  return { ...block, margin: [left ?? 0, top ?? 0, right ?? 0, 0] }
}

/** The first block of a chapter begins a page. */
function newPage(content: Content[]): Content[] {
  const [first, ...rest] = content
  if (!first) return []
  return [{ stack: [first], pageBreak: 'before' }, ...rest]
}
