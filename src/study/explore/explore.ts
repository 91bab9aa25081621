/** One or two inputs as axes and a margin at every point: where passing ends. */
import type { Plan } from '../../plan/types'
import { stops } from '../find/bare'
import { energyFindings } from '../find/quick'
import type { Models } from '../obstacles'
import type { Finding } from '../results'
import { study } from '../study'

export type AxisInput =
  | 'pretension'
  | 'connector-length'
  | 'mass'
  | 'd-ring'
  | 'temperature-high'
  | 'stations'

export interface Axis {
  input: AxisInput
  from: number
  to: number
  steps: number
}

export const AXES: Record<AxisInput, { label: string; unit: string }> = {
  pretension: { label: 'Pretension', unit: 'N' },
  'connector-length': { label: 'Connector length', unit: 'm' },
  mass: { label: 'Mass of every worker', unit: 'kg' },
  'd-ring': { label: 'D-ring height', unit: 'm' },
  'temperature-high': { label: 'Warmest temperature', unit: 'degC' },
  stations: { label: 'Length of the line, scaled about its start', unit: 'm' },
}

export interface ExploreTask {
  plan: Plan
  line: string
  x: Axis
  y?: Axis
  /** With obstacles too: slower, for the fall room is built at every point. */
  obstacles: boolean
}

export interface ExplorePoint {
  x: number
  y: number | null
  /** The least margin as a share of its limit; below 0 where a rule fails; null where it is not known. */
  margin: number | null
  /** The rule that has it. */
  rule: string | null
  passes: boolean
}

/** What an input is now, in its unit. */
export function axisValue(plan: Plan, lineId: string, input: AxisInput): number {
  const line = plan.lines.find((l) => l.id === lineId)!
  const worker = plan.workers.find((w) => w.line === lineId)
  const connector = plan.parts.find((p) => p.kind === 'connector' && p.id === worker?.connector)
  switch (input) {
    case 'pretension':
      return line.pretension
    case 'connector-length':
      return connector?.kind === 'connector' ? connector.length : 0
    case 'mass':
      return worker?.mass ?? 0
    case 'd-ring':
      return worker?.dRingHeight ?? 0
    case 'temperature-high':
      return line.serviceTemperature.high
    case 'stations':
      return line.stanchions.at(-1)!.station - line.stanchions[0]!.station
  }
}

/** The plan with one input at a value. */
function withAxis(plan: Plan, lineId: string, input: AxisInput, value: number): Plan {
  const line = plan.lines.find((l) => l.id === lineId)!
  const crew = (change: object): Plan => ({
    ...plan,
    workers: plan.workers.map((w) => (w.line === lineId ? { ...w, ...change } : w)),
  })
  const lined = (change: object): Plan => ({
    ...plan,
    lines: plan.lines.map((l) => (l.id === lineId ? { ...l, ...change } : l)),
  })
  switch (input) {
    case 'pretension':
      return lined({ pretension: value })
    case 'mass':
      return crew({ mass: value })
    case 'd-ring':
      return crew({ dRingHeight: value })
    case 'temperature-high':
      return lined({ serviceTemperature: { ...line.serviceTemperature, high: value } })
    case 'connector-length': {
      const used = new Set(plan.workers.filter((w) => w.line === lineId).map((w) => w.connector))
      return {
        ...plan,
        parts: plan.parts.map((p) =>
          used.has(p.id) && p.kind === 'connector' ? { ...p, length: value } : p,
        ),
      }
    }
    case 'stations': {
      const first = line.stanchions[0]!.station
      const factor = value / axisValue(plan, lineId, 'stations')
      return lined({
        stanchions: line.stanchions.map((s) => ({ ...s, station: first + (s.station - first) * factor })),
      })
    }
  }
}

/** Rules about loops and feet are left out: an axis moves stanchions between gaps. */
const COUNTED =
  /^(wire-rope|hardware|stanchion|tie-back)-strength$|^(loop-strength|absorber-runs-out|free-fall|arrest-force|deceleration|connector-runs-out|anchor-spacing|obstacle-gap)$/

function pointOf(findings: Finding[]): Pick<ExplorePoint, 'margin' | 'rule' | 'passes'> {
  const counted = findings.filter((f) => COUNTED.test(f.rule))
  let worst: { margin: number; rule: string } | null = null
  for (const f of counted) {
    if (f.margin === null || f.margin === undefined) continue
    const margin = f.margin / (f.limit ? Math.abs(f.limit) : 1)
    if (!worst || margin < worst.margin) worst = { margin, rule: f.rule }
  }
  const bad = counted.find((f) => stops(f) || f.status === 'unknown')
  if (!worst || counted.some((f) => f.status === 'unknown')) {
    return { margin: null, rule: bad?.rule ?? null, passes: false }
  }
  return { ...worst, passes: bad === undefined }
}

const valuesOf = (a: Axis): number[] =>
  Array.from({ length: a.steps }, (_, i) => a.from + ((a.to - a.from) * i) / Math.max(1, a.steps - 1))

/** Computes the points row by row, by energy; yields the share done. */
export function* explore(task: ExploreTask, models?: Models): Generator<number, ExplorePoint[]> {
  const line = task.plan.lines.find((l) => l.id === task.line)!
  const alone = { ...task.plan, lines: [line], workers: task.plan.workers.filter((w) => w.line === line.id) }
  const xs = valuesOf(task.x)
  const ys = task.y ? valuesOf(task.y) : [null]
  const points: ExplorePoint[] = []
  for (const y of ys) {
    const base = y === null ? alone : withAxis(alone, line.id, task.y!.input, y)
    for (const x of xs) {
      yield points.length / (xs.length * ys.length)
      const plan = withAxis(base, line.id, task.x.input, x)
      const findings = task.obstacles
        ? study(plan, { withoutTime: true, ...(models ? { models } : {}) }).results.findings
        : energyFindings(plan, plan.lines[0]!)
      points.push({ x, y, ...pointOf(findings) })
    }
  }
  return points
}
