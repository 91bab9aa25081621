/** The cover: what this is, for which state of the plan, what was found, what was not checked, who approved. */
import type { Content } from 'pdfmake/interfaces'
import { approvalState } from '../../plan/records/log'
import { greatestArrest } from '../../study/greatest-arrest'
import { dayOf } from '../input'
import { heading, say, table } from '../pdf/paper'
import { countedFindings } from '../status'
import type { Chapter } from './context'

export const CAUTION =
  "For planning. Design, installation and use under a qualified person; the parts' own documentation and local codes govern."

/** Said plainly, so that nobody takes silence for a check. */
export const NOT_CHECKED: readonly string[] = [
  'Side pull on a loop and pull-out of its concrete: for the engineer of record. Loops are compared straight only.',
  "The girder itself: its strength, stability and bracing under the line's forces.",
  'Edges and abrasion: a connector or rope that runs over an edge.',
  'A swing into something beside the line, other than by the plan area and depth of the fall room.',
  'Wear, damage, corrosion and age of parts; whether a part is what the plan says it is.',
  "The girder's own expansion with temperature, wind, ice, and vibration from traffic.",
  'Harness fit, and the body on its way down: it hangs straight in this calculation.',
  'Anything that is not in the plan: what it does not name was not looked at.',
]

export function cover(c: Chapter): Content[] {
  const { plan, study, madeAt, revision } = c.input
  const { letters } = c
  const rows: [string, string][] = [
    ['Plan', plan.title],
    ['Site', plan.site ?? ''],
    ['Revision', revision ?? 'none stated'],
    ['Plan hash (sha256)', study.results.planHash],
    ['Made on', dayOf(madeAt)],
    ['Lines', String(plan.lines.length)],
    ['Limits and margins', `preset ${plan.basis.name}`],
    ['Findings', countedFindings(study.results.findings)],
    ['Approval', approvalText(c)],
  ]
  return [
    say(letters, 'Calculation package', { size: 11 }),
    say(letters, plan.title, { bold: true, size: 22, room: 22 }),
    { ...say(letters, 'Temporary horizontal lifelines on stanchions along girders'), margin: [0, 0, 0, 10] },
    table(letters, { head: ['', ''], rows, widths: [120, '*'], size: 9 }),
    say(letters, CAUTION, { bold: true }),
    ...(plan.notes ? [heading(letters, 'Notes', 3), say(letters, plan.notes, { room: 52 })] : []),
    heading(letters, 'What was not checked', 2),
    { ul: NOT_CHECKED.map((t) => say(letters, t)) },
  ]
}

function approvalText(c: Chapter): string {
  const state = approvalState(c.input.plan, c.input.study.results.planHash)
  if (!state.record) return 'none recorded'
  const who = `${state.record.by}, ${dayOf(state.record.at)}`
  return state.status === 'current'
    ? `recorded by ${who}, for exactly this plan`
    : `stale: recorded by ${who} for another state of the plan`
}

/** The governing numbers of every line, on one table. */
export function governingTable(c: Chapter): Content[] {
  const rows = c.lines.map(({ line, results }) => {
    const { governing: g, installed } = results
    return [
      line.name,
      c.both(installed.tension, 'N'),
      c.both(g.tension, 'N'),
      c.both(g.wireRopeSafetyFactor, 'ratio'),
      c.both(greatestArrest(c.input.study.results, results), 'N'),
      c.both(g.clearance, 'm'),
    ]
  })
  const head = [
    'Line',
    'Pretension',
    'Greatest tension',
    'Wire rope, strength over demand',
    'Arrest force on one body',
    'Clearance below the walking surface',
  ]
  return [
    heading(c.letters, 'Governing numbers', 2),
    table(c.letters, { head, rows, widths: ['*', 76, 84, 78, 84, 96] }),
    say(
      c.letters,
      "At each line's own grip, the greater of the two methods. The arrest force is the greatest of all falls, beside a stanchion too. Clearance includes the margin below.",
      { size: 8 },
    ),
  ]
}

/** Where the qualified person signs: for exactly this hash. */
export function signatureBlock(c: Chapter): Content[] {
  const hash = c.input.study.results.planHash
  const rows = ['Prepared by', 'Checked by', 'Qualified person'].map((who) => [who, '', '', ''])
  return [
    heading(c.letters, 'Signatures', 2),
    say(
      c.letters,
      `For the plan with the hash ${hash}. Any change of the plan gives another hash, and these signatures are then for another plan.`,
    ),
    table(c.letters, {
      head: ['', 'Name', 'Date', 'Signature'],
      rows,
      widths: [100, '*', 80, 160],
      boxed: true,
      rowHeight: 30,
      size: 9,
    }),
  ]
}
