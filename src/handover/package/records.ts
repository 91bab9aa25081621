/** What is recorded of each line: standing, inspections, daily checks, as-built against design, notes on findings. */
import type { Content } from 'pdfmake/interfaces'
import { lineState } from '../../plan/records/line-state'
import { recordsOf } from '../../plan/records/log'
import type { InspectionRecord, PlanRecord } from '../../plan/types'
import { dayOf, type LineFile } from '../input'
import { heading, say, table } from '../pdf/paper'
import { asBuiltDifferences } from '../records/as-built'
import type { Chapter } from './context'

const standing: Record<ReturnType<typeof lineState>['service'], string> = {
  'not-inspected': 'not inspected yet: not to be used',
  'in-service': 'in service',
  'out-of-service': 'out of service',
  retired: 'retired',
}

const kinds: Record<PlanRecord['kind'], string> = {
  'rescue-plan': 'rescue plan',
  approval: 'approval',
  'as-built': 'as built',
  inspection: 'inspection',
  daily: 'daily check',
  'out-of-service': 'out of service',
  'in-service': 'in service',
  retired: 'retired',
  'finding-note': 'note on a finding',
}

export function recordsChapter(c: Chapter): Content[] {
  const notes = (c.input.plan.records ?? []).filter((r) => r.kind === 'finding-note')
  return [
    heading(c.letters, 'Records', 1),
    ...c.lines.flatMap((file) => lineRecords(c, file)),
    ...(notes.length > 0 ? [heading(c.letters, 'Notes on findings', 2), noteTable(c, notes)] : []),
  ]
}

function lineRecords(c: Chapter, file: LineFile): Content[] {
  const { plan, madeAt } = c.input
  const state = lineState(plan, file.line.id, madeAt)
  const due = state.nextDailyDue
    ? `; next daily check due ${state.nextDailyDue.slice(0, 16).replace('T', ' ')}`
    : ''
  const text = `${standing[state.service]}${state.reason ? `: ${state.reason}` : ''}${due}`
  const records = recordsOf(plan, file.line.id)
  return [
    heading(c.letters, file.line.name, 2),
    say(c.letters, text),
    ...asBuiltTable(c, file),
    ...(records.length > 0
      ? [
          table(c.letters, {
            head: ['Date', 'What', 'By', 'Said'],
            rows: records.map((r) => [dayOf(r.at), kinds[r.kind], r.by, recordText(c, r)]),
            widths: [62, 84, 100, '*'],
          }),
        ]
      : [say(c.letters, 'Nothing is recorded.')]),
  ]
}

function asBuiltTable(c: Chapter, file: LineFile): Content[] {
  const differences = asBuiltDifferences(c.input.plan, file.line)
  if (!differences) return []
  const rows = differences.stanchions.map((d) => [
    d.id,
    c.both(d.designed, 'm'),
    c.both(d.measured, 'm'),
    c.both(d.difference, 'm'),
  ])
  const { tension } = differences
  rows.push([
    'tension',
    c.both(tension.designed, 'N'),
    c.both(tension.measured, 'N'),
    c.both(tension.difference, 'N'),
  ])
  return [
    heading(c.letters, 'As built against design', 3),
    table(c.letters, {
      head: ['Stanchion', 'Design', 'Measured', 'Difference'],
      rows,
      widths: ['*', 120, 120, 120],
    }),
  ]
}

/** Every item by its short name under what was found, what failed first. */
function inspected(r: InspectionRecord): string {
  const found = [
    ['fail', 'failed'],
    ['pass', 'passed'],
    ['n/a', 'not applicable'],
  ] as const
  const texts = found.flatMap(([result, word]) => {
    const items = r.items.filter((i) => i.result === result)
    const named = items.map((i) => i.id.replaceAll('-', ' ') + (i.note ? ` (${i.note})` : ''))
    return named.length > 0 ? [`${word}: ${named.join(', ')}`] : []
  })
  return texts.join('; ') || 'no item was looked at'
}

function recordText(c: Chapter, r: PlanRecord): string {
  const note = r.note ? `; ${r.note}` : ''
  switch (r.kind) {
    case 'rescue-plan':
      return `${r.method}; ${r.gear}; ${r.people} people; ${r.minutes} minutes${note}`
    case 'as-built':
      return `tension ${c.both(r.tension, 'N')}${note}`
    case 'inspection': {
      const photos = r.photos?.length ? `; photos ${r.photos.join(', ')}` : ''
      return `${inspected(r)}${photos}${note}`
    }
    case 'daily':
      return `${r.passed ? 'passed' : 'did not pass'}, tension ${c.both(r.tension, 'N')}${note}`
    case 'out-of-service':
    case 'in-service':
    case 'retired':
      return `${r.reason}${note}`
    case 'approval':
    case 'finding-note':
      return note
  }
}

function noteTable(c: Chapter, notes: PlanRecord[]): Content {
  const rows = notes.flatMap((r) =>
    r.kind === 'finding-note' ? [[dayOf(r.at), r.by, `${r.rule} ${r.subject}`, r.text]] : [],
  )
  return table(c.letters, { head: ['Date', 'By', 'Finding', 'Said'], rows, widths: [62, 100, 120, '*'] })
}
