/** What the papers cost: seconds a page of the calculation package, and how it grows with lines. */
import { paperFonts } from '../src/cli/paper-fonts'
import { calculationPackage } from '../src/handover/package'
import { pdfBytes } from '../src/handover/pdf/engine'
import { letters } from '../src/handover/pdf/letters'
import type { Plan } from '../src/plan/types'
import { study } from '../src/study/study'
import { sample } from '../tests/support/sample'
import { checksum, size, type Timed } from './harness'

/** The same plan with its first line as often as asked, each with ids of its own. */
function timesLines(plan: Plan, count: number): Plan {
  const [line] = plan.lines
  const lines = Array.from({ length: count }, (_, k) => ({
    ...line!,
    id: `${line!.id}-${k}`,
    name: `Line ${k + 1}`,
  }))
  const own = plan.workers.filter((w) => w.line === line!.id)
  const workers = lines.flatMap((l, k) => own.map((w) => ({ ...w, id: `${w.id}-${k}`, line: l.id })))
  return { ...plan, lines, workers }
}

/** Page objects of a PDF as it is written. */
const pagesOf = (bytes: Uint8Array): number =>
  (
    Buffer.from(bytes)
      .toString('latin1')
      .match(/\/Type \/Page\b/g) ?? []
  ).length

async function packageOf(plan: Plan): Promise<{ pages: number; ms: number }> {
  const fonts = paperFonts()
  const input = { plan, study: study(plan, { withoutTime: true }), madeAt: '2026-03-14', fonts }
  const start = performance.now()
  const bytes = await pdfBytes(calculationPackage(input, letters(fonts)), fonts)
  return { pages: pagesOf(bytes), ms: performance.now() - start }
}

export async function bench(): Promise<Timed[]> {
  const plan = sample('thin-margins')
  // Fonts and layout code warm up.
  await packageOf(timesLines(plan, 1))
  const rows: Timed[] = []
  for (const count of size([1, 4], [1])) {
    const { pages, ms } = await packageOf(timesLines(plan, count))
    const note = `${pages} pages, ${(ms / 1000 / pages).toFixed(3)} s a page`
    const name = `calculation package of ${count} ${count === 1 ? 'line' : 'lines'}`
    rows.push({ name, median: ms, low: ms, high: ms, checksum: checksum([pages]), note })
  }
  return rows
}
