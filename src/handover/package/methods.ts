/** Both methods side by side: the worst falls of each span by energy and in time, and what published tests say. */
import type { Content } from 'pdfmake/interfaces'
import type { Fall } from '../../study/results'
import type { LineFile } from '../input'
import { nameOf } from '../names'
import { heading, say, table } from '../pdf/paper'
import type { Chapter } from './context'

const BAND =
  'Published for comparison: in 42 dynamic fall tests an analytical static method with the flexibility of the anchorages overestimated the tension in most cases, by at most 17 % (Galy and Lan, JOSE 24(1), 2018, abstract). The method in time includes waves in the rope, which the energy method leaves out; the greater of the two governs.'

type Figure = 'tension' | 'arrestForce' | 'clearance'

/** The fall with the greatest figure; null where none is known. */
function worstFall(falls: Fall[], figure: Figure): Fall | null {
  return falls.reduce<Fall | null>((worst, f) => {
    const value = f[figure]
    return value === null || (worst && worst[figure]! >= value) ? worst : f
  }, null)
}

export function methodsChapter(c: Chapter): Content[] {
  const { letters } = c
  return [
    heading(letters, 'Both methods', 1),
    say(letters, BAND),
    ...c.lines.flatMap((file) => [
      heading(letters, file.line.name, 2),
      methodTable(c, file),
      ...fallTable(c, file),
    ]),
  ]
}

function methodTable(c: Chapter, file: LineFile): Content {
  const own = file.results.falls.filter((f) => f.grip === (file.line.grip ?? 'sliding'))
  const rows = (['tension', 'arrestForce', 'clearance'] as const).map((figure) => {
    const energy =
      worstFall(
        own.filter((f) => f.method === 'energy'),
        figure,
      )?.[figure] ?? null
    const time =
      worstFall(
        own.filter((f) => f.method === 'dynamic'),
        figure,
      )?.[figure] ?? null
    const unit = figure === 'clearance' ? 'm' : 'N'
    const ratio = energy !== null && time !== null && energy > 0 ? time / energy : null
    return [figureWords[figure], c.both(energy, unit), c.both(time, unit), c.both(ratio, 'ratio')]
  })
  return table(c.letters, {
    head: ['Worst at the own grip', 'By energy', 'In time', 'In time over energy'],
    rows,
    widths: ['*', 120, 120, 90],
  })
}

const figureWords: Record<Figure, string> = {
  tension: 'Tension in the wire rope',
  arrestForce: 'Arrest force on one body',
  clearance: 'Clearance below the walking surface',
}

/** For each span and method the falls that govern tension and clearance; all falls are in the table of falls. */
function fallTable(c: Chapter, file: LineFile): Content[] {
  const own = file.results.falls.filter((f) => f.grip === (file.line.grip ?? 'sliding'))
  const spans = [...new Set(own.map((f) => f.span))].sort((a, b) => a - b)
  const picked = spans.flatMap((span) =>
    (['energy', 'dynamic'] as const).flatMap((method) => {
      const some = own.filter((f) => f.span === span && f.method === method)
      const found = [worstFall(some, 'tension'), worstFall(some, 'clearance')]
      return found.filter((f, i): f is Fall => f !== null && found.indexOf(f) === i)
    }),
  )
  if (picked.length === 0) return [say(c.letters, noFalls(file))]
  const rows = picked.map((f) => [
    spanName(file, f.span),
    f.method === 'energy' ? 'by energy' : 'in time',
    `${f.line} line, ${f.connector} connector`,
    nameOf(c.input.plan, f.worker),
    c.both(f.freeFall, 'm'),
    c.both(f.lineDrop, 'm'),
    c.both(f.connectorExtension, 'm'),
    c.both(f.arrestForce, 'N'),
    c.both(f.tension, 'N'),
    c.both(f.clearance, 'm'),
  ])
  return [
    table(c.letters, {
      head: [
        'Span',
        'Method',
        'Corner',
        'Worker',
        'Free fall',
        'Line drop',
        'Connector',
        'On one body',
        'Tension',
        'Clearance',
      ],
      rows,
      widths: [34, 36, 52, '*', 50, 48, 48, 50, 50, 50],
      size: 7,
    }),
  ]
}

const noFalls = (file: LineFile): string =>
  file.study.input.workers.length === 0
    ? 'No worker is on this line in the plan, so no fall was computed.'
    : (file.study.falls.noDynamic ?? 'No fall could be computed.')

function spanName({ line }: LineFile, span: number): string {
  const [a, b] = [line.stanchions[span], line.stanchions[span + 1]]
  return a && b ? `${a.id} to ${b.id}` : String(span + 1)
}
