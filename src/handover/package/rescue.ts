/** Rescue: where a worker can hang, how far below the edge and over what, the plan that is recorded, and a caution. */
import type { Content } from 'pdfmake/interfaces'
import { girderRoll } from '../../drawings/frame'
import { rescuePlanGaps, rescuePlanOf } from '../../plan/records/log'
import type { Line, Plan, Vec3 } from '../../plan/types'
import type { LineDetail } from '../../study/details'
import type { Results } from '../../study/results'
import type { LineFile } from '../input'
import { nameOf } from '../names'
import { heading, say, table } from '../pdf/paper'
import type { Chapter } from './context'

/** HSE first-aid advice of September 2008; OSHA 1926.502(d)(20) and SHIB 03-24-2004. */
export const SUSPENSION_CAUTION =
  'Hanging still and upright in a harness, most people come near fainting within an hour, a fifth within 10 minutes (HSE first-aid advice, 2008); it can end in death in less than 30 minutes (OSHA SHIB 03-24-2004). Prompt rescue is required (OSHA 1926.502(d)(20)). Reach a hanging worker as soon as can be done without another fall; afterwards usual first aid, lying down, is not contradicted (HSE).'

export interface Hanging {
  worker: string
  station: number
  /** Rope's point of attachment, D-ring and feet below the walking surface, m. */
  attachment: number
  dRing: number
  feet: number
  over: string[]
}

/** Where the worker of the deepest fall hangs; null where no fall was computed. */
export function hangingOf(plan: Plan, results: Results, line: Line, detail: LineDetail): Hanging | null {
  const { governing, hangingAt, dRingAt, feetAt } = detail
  const girder = plan.girders.find((g) => g.id === line.girder)
  if (!girder || !governing || !hangingAt || !dRingAt || !feetAt) return null
  const roll = girderRoll(girder)
  const below = (p: Vec3): number => -roll.unroll(p).height
  const over = results.obstacles
    .filter((o) => o.line === line.id && o.gap !== null)
    .map((o) => nameOf(plan, o.id))
  return {
    worker: nameOf(plan, governing.worker),
    station: governing.station,
    attachment: below(hangingAt),
    dRing: below(dRingAt),
    feet: below(feetAt),
    over,
  }
}

export function rescueChapter(c: Chapter): Content[] {
  return [
    heading(c.letters, 'Rescue', 1),
    say(c.letters, SUSPENSION_CAUTION),
    ...c.lines.flatMap((file) => rescueOfLine(c, file)),
  ]
}

function rescueOfLine(c: Chapter, file: LineFile): Content[] {
  const { plan: whole, study } = c.input
  const hanging = hangingOf(whole, study.results, file.line, file.detail)
  const record = rescuePlanOf(c.input.plan, file.line.id)
  const gaps = rescuePlanGaps(record)
  const where: [string, string][] = hanging
    ? [
        ['Deepest fall', `${hanging.worker}, station ${c.both(hanging.station, 'm')}`],
        ['D-ring below the edge', c.both(hanging.dRing, 'm')],
        ['Feet below the edge', c.both(hanging.feet, 'm')],
        ['Over', hanging.over.join(', ') || 'nothing that the plan names'],
      ]
    : [['Deepest fall', 'not known: no fall was computed']]
  const plan: [string, string][] = record
    ? [
        ['How a hanging worker is reached', record.method],
        ['Gear', record.gear],
        ['People', String(record.people)],
        ['Time', `${record.minutes} minutes`],
        ['Recorded by', `${record.by}, ${record.at.slice(0, 10)}`],
      ]
    : []
  const lacks: [string, string][] = gaps.length > 0 ? [['Still to fill in', gaps.join('; ')]] : []
  return [
    heading(c.letters, file.line.name, 2),
    table(c.letters, { head: ['', ''], rows: [...where, ...plan, ...lacks], widths: [170, '*'], size: 8.5 }),
  ]
}
