/** The study: a plan in, everything computed out. Pure; it may run in a worker, in a test or headless. */
import { planHash } from '../plan/hash'
import type { Line, Plan } from '../plan/types'
import { findingsOf } from '../rules'
import type { ObstacleFacts, RowFacts, RuleContext } from '../rules/context'
import { type LineDetail, lineDetail } from './details'
import { type LineStudy, studyLine, type TimeFalls } from './line-study'
import { type Models, type ObstacleStudy, studyObstacles } from './obstacles'
import type { ObstacleResult, Results } from './results'
import { timeFallsOf } from './time-falls'

export interface StudyOptions {
  /** Leave the falls in time out (while something is being dragged): what needs them says so. */
  withoutTime?: boolean
  /** Tell least distances in any direction and the rooms' sizes too; absent: where falls in time are computed. */
  wholeRooms?: boolean
  /** Models that the plan names, by file; what is missing makes its gap unknown. */
  models?: Models
  /** Studies of lines that have not changed since, by line id. */
  known?: Map<string, LineStudy>
  progress?: (done: number, what: string) => void
  cancelled?: () => boolean
}

export interface Study {
  plan: Plan
  results: Results
  lines: LineStudy[]
  details: LineDetail[]
  obstacles: ObstacleStudy
  context: RuleContext
}

/** Thrown by a study whose caller has asked it to stop. */
class StudyCancelled extends Error {}

const noTime: TimeFalls = () => 'the falls in time are still to be computed'

/** Loop rows that carry a bracket or a tie-back leg of these lines, each once. */
export function rowsInUse(lines: Pick<LineStudy, 'input'>[]): RowFacts[] {
  const rows = new Map<string, RowFacts>()
  for (const { input } of lines) {
    const used = [
      ...input.stanchions.flatMap((s) => (s.engaged.row ? [s.engaged.row] : [])),
      ...input.stanchions.flatMap((s) =>
        s.tieBacks.flatMap((t) => t.legs.flatMap((l) => (l.loop ? [l.loop.row] : []))),
      ),
    ]
    for (const row of used) {
      const key = `${input.girder.id}/${row.id}`
      const at = rows.get(key) ?? { row, girder: input.girder, lines: [] }
      if (!at.lines.includes(input.line.id)) at.lines.push(input.line.id)
      rows.set(key, at)
    }
  }
  return [...rows.values()]
}

function obstacleFacts(study: ObstacleStudy): ObstacleFacts[] {
  return study.gaps.map((g) => ({
    id: g.result.id,
    name: g.name,
    kind: g.kind,
    margin: g.margin,
    gap: g.result.unknown !== undefined ? { unknown: g.result.unknown } : g.result.gap,
    horizontal: g.result.horizontal ?? null,
    at: g.result.at,
    line: g.result.line,
    station: g.result.station,
    worker: g.worker,
  }))
}

/** Studies a whole plan that `readPlan` has accepted. */
export function study(plan: Plan, options: StudyOptions = {}): Study {
  const timeFalls = options.withoutTime ? noTime : timeFallsOf(options)
  const lines = plan.lines.map((line: Line, i) => {
    if (options.cancelled?.()) throw new StudyCancelled('the study was stopped')
    options.progress?.(i / plan.lines.length, line.name)
    return options.known?.get(line.id) ?? studyLine(plan, line, timeFalls)
  })
  const obstacles = studyObstacles(plan, lines, options.models, options.wholeRooms ?? !options.withoutTime)
  const context: RuleContext = {
    plan,
    lines: lines.map((l) => l.facts),
    rows: rowsInUse(lines),
    obstacles: obstacleFacts(obstacles),
  }
  const results: Results = {
    format: 'fallroom-results',
    version: 1,
    plan: plan.title,
    planHash: planHash(plan),
    lines: lines.map((l) => l.results),
    obstacles: obstacles.gaps.map((g): ObstacleResult => g.result),
    ...(obstacles.sizes ? { rooms: obstacles.sizes } : {}),
    findings: findingsOf(context),
  }
  return { plan, results, lines, details: lines.map((l) => lineDetail(l)), obstacles, context }
}
