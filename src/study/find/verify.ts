/** A layout through the whole study: whether it passes every rule, and its figures. */
import type { Plan } from '../../plan/types'
import { studyLine } from '../line-study'
import type { Models } from '../obstacles'
import type { Finding } from '../results'
import { study } from '../study'
import { stops } from './bare'
import { aloneWith, type Pattern, withLayout } from './layout'
import { reasonsOf } from './places'
import { energyFindings } from './quick'
import { timeCheck } from './time-stop'
import type { Candidate, Layout, Limiting, Reason } from './types'

export interface Verdict {
  passes: boolean
  /** What stops it; also what could not be computed. */
  reasons: Reason[]
  candidate: Candidate | null
}

const strain = (f: Finding): number =>
  f.margin === null || f.margin === undefined
    ? Number.POSITIVE_INFINITY
    : f.margin / Math.max(Math.abs(f.limit ?? 0), 1)

/** Rules that feet, places and parts meet exactly by design: they do not tell layouts apart. */
const BY_DESIGN =
  /^(tie-back-(angle|distance|side|loops-.*)|strap-length|end-tie-back|loops-.*|bar-size|bolt-edge|line-slope|worker-mass)$/

/** The findings that hold by least, the nearest first. */
function limitingOf(findings: Finding[], count = 3): Limiting[] {
  return findings
    .filter((f) => f.status === 'pass' && Number.isFinite(strain(f)) && !BY_DESIGN.test(f.rule))
    .sort((a, b) => strain(a) - strain(b))
    .slice(0, count)
    .map((f) => ({ rule: f.rule, subject: f.subject, text: f.text, share: strain(f) }))
}

/** The falls in time that were left out make two rules unknown that no energy method can know. */
const NEEDS_TIME = new Set(['time-method'])

/** Studies a layout with its line alone; `time` with the falls in time too. */
export function verify(
  plan: Plan,
  lineId: string,
  pattern: Pattern,
  layout: Layout,
  options: { time: boolean; models?: Models },
): Verdict {
  const made = withLayout(plan, lineId, pattern, layout)
  const line = made.lines.find((l) => l.id === lineId)!
  const alone = aloneWith(made, line)
  const early = energyFindings(alone, line).filter(stops)
  if (early.length > 0) return { passes: false, reasons: reasonsOf(early), candidate: null }
  const timed = options.time ? timeCheck(alone, line) : null
  if (timed && timed.fails.length > 0) {
    return { passes: false, reasons: reasonsOf(timed.fails), candidate: null }
  }
  const { results } = study(alone, {
    withoutTime: !options.time,
    ...(timed ? { known: new Map([[line.id, studyLine(alone, line, () => timed.falls)]]) } : {}),
    ...(options.models ? { models: options.models } : {}),
  })
  const bad = results.findings.filter(
    (f) => stops(f) || (f.status === 'unknown' && (options.time || !NEEDS_TIME.has(f.rule))),
  )
  const found = results.lines[0]!
  const gaps = results.obstacles.flatMap((o) => (o.gap === null ? [] : [o.gap]))
  const plates = line.stanchions.filter((s) => (s.plate ?? 0) > 0).length
  const candidate: Candidate = {
    layout,
    stanchions: line.stanchions.length,
    parts: 2 * line.stanchions.length + line.tieBacks.length + plates + (line.absorber === null ? 0 : 1),
    clearance: found.governing.clearance,
    tension: found.governing.tension,
    governing: found.governing,
    gap: gaps.length > 0 ? Math.min(...gaps) : null,
    limiting: limitingOf(results.findings),
    warnings: results.findings.filter((f) => f.status === 'warn'),
    verified: options.time ? 'time' : 'energy',
  }
  return { passes: bad.length === 0, reasons: reasonsOf(bad), candidate }
}
