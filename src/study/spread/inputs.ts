/** What is uncertain about a line, and how a point of the unit cube becomes a plan with definite figures. */
import type { ConnectorPart, Line, LineAbsorberPart, Part, Plan, Range, Worker } from '../../plan/types'
import { partIdsOf } from '../../plan/uses'

/** How far the figures vary that the plan gives as one number. Assumptions of the spread, told with its result. */
export interface Tolerances {
  /** Share of a worker's mass, plus or minus. */
  mass: number
  /** m, plus or minus. */
  dRingHeight: number
  /** As-built station of every stanchion, m, plus or minus. */
  station: number
}

export const USUAL_TOLERANCES: Tolerances = { mass: 0.1, dRingHeight: 0.05, station: 0.02 }

export interface SpreadInput {
  id: string
  label: string
  low: number
  high: number
  unit: string
  /** Puts a value into the draft. */
  apply: (draft: Draft, value: number) => void
}

/** The line, its crew and parts, copied so that they can be changed. */
export interface Draft {
  line: Line
  workers: Worker[]
  parts: Part[]
}

const exact = (value: number): Range => ({ low: value, high: value })
const within = (r: Range, share: number): number => r.low + share * (r.high - r.low)

function partOf<K extends Part['kind']>(draft: Draft, kind: K, id: string): Extract<Part, { kind: K }> {
  const part = draft.parts.find((p) => p.kind === kind && p.id === id)
  if (!part) throw new Error(`part ${id} is missing: the plan was not read through readPlan`)
  return part as Extract<Part, { kind: K }>
}

/** A part that lies between the ends of its range: onset and full extension go together. */
function setAbsorber(part: LineAbsorberPart, share: number): void {
  part.onset = exact(within(part.onset, share))
  part.full = exact(within(part.full, share))
}

const setPlateau = (part: ConnectorPart, share: number): void => {
  part.plateau = exact(within(part.plateau, share))
}

/** The uncertain inputs of a line, each with its range; all are taken as evenly spread over it. */
export function spreadInputs(plan: Plan, lineId: string, tolerances: Tolerances): SpreadInput[] {
  const line = plan.lines.find((l) => l.id === lineId)!
  const crew = plan.workers.filter((w) => w.line === lineId)
  const rope = plan.parts.find((p) => p.kind === 'wire-rope' && p.id === line.wireRope)
  const inputs: SpreadInput[] = []
  const { pretension, pretensionTolerance: t } = line
  inputs.push({
    id: 'pretension',
    label: 'Pretension',
    low: pretension * (1 - t),
    high: pretension * (1 + t),
    unit: 'N',
    apply: (d, v) => {
      d.line.pretension = v
    },
  })
  if (rope?.kind === 'wire-rope') {
    const { low, high } = rope.axialStiffness
    const apply = (d: Draft, v: number): void => {
      partOf(d, 'wire-rope', line.wireRope).axialStiffness = exact(v)
    }
    inputs.push({ id: 'stiffness', label: 'Rope stiffness EA', low, high, unit: 'N', apply })
  }
  const { low, high } = line.serviceTemperature
  inputs.push({
    id: 'temperature',
    label: 'Temperature',
    low,
    high,
    unit: 'degC',
    apply: (d, v) => {
      d.line.serviceTemperature = exact(v)
    },
  })
  const { absorber } = line
  if (absorber !== null) {
    const apply = (d: Draft, v: number): void => setAbsorber(partOf(d, 'line-absorber', absorber), v)
    inputs.push({ id: 'absorber', label: 'Absorber force', low: 0, high: 1, unit: 'fraction', apply })
  }
  for (const id of new Set(crew.map((w) => w.connector))) {
    const name = plan.parts.find((p) => p.id === id)?.name ?? id
    const apply = (d: Draft, v: number): void => setPlateau(partOf(d, 'connector', id), v)
    inputs.push({
      id: `plateau ${id}`,
      label: `${name}, tearing force`,
      low: 0,
      high: 1,
      unit: 'fraction',
      apply,
    })
  }
  for (const [i, w] of crew.entries()) inputs.push(...workerInputs(w, i, tolerances))
  line.stanchions.slice(0, 12).forEach((s, i) => {
    const apply = (d: Draft, v: number): void => {
      d.line.stanchions[i]!.station = v
    }
    const label = `Station of ${s.id}`
    const around = { low: s.station - tolerances.station, high: s.station + tolerances.station }
    inputs.push({ id: `station ${s.id}`, label, ...around, unit: 'm', apply })
  })
  return inputs
}

function workerInputs(w: Worker, i: number, t: Tolerances): SpreadInput[] {
  return [
    {
      id: `mass ${w.id}`,
      label: `${w.name}, mass`,
      low: w.mass * (1 - t.mass),
      high: w.mass * (1 + t.mass),
      unit: 'kg',
      apply: (d, v) => {
        d.workers[i]!.mass = v
      },
    },
    {
      id: `d-ring ${w.id}`,
      label: `${w.name}, D-ring height`,
      low: w.dRingHeight - t.dRingHeight,
      high: w.dRingHeight + t.dRingHeight,
      unit: 'm',
      apply: (d, v) => {
        d.workers[i]!.dRingHeight = v
      },
    },
  ]
}

/** The plan of one sample: every uncertain figure at one value, both ends of its range the same. */
export function samplePlan(plan: Plan, lineId: string, inputs: SpreadInput[], values: number[]): Plan {
  const line = plan.lines.find((l) => l.id === lineId)!
  const used = partIdsOf({ lines: [line], workers: plan.workers })
  const draft: Draft = {
    line: { ...line, stanchions: line.stanchions.map((s) => ({ ...s })), pretensionTolerance: 0 },
    workers: plan.workers.filter((w) => w.line === lineId).map((w) => ({ ...w })),
    parts: plan.parts.map((p) => (used.has(p.id) ? { ...p } : p)),
  }
  inputs.forEach((input, i) => {
    input.apply(draft, values[i]!)
  })
  return { ...plan, lines: [draft.line], workers: draft.workers, parts: draft.parts }
}
