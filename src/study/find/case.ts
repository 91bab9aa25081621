/** One selection of parts between two end gaps: its graph of spans, with why each length or place is ruled out. */
import { type MeshTarget, targetsOf } from '../../geometry/gaps'
import { girderFrame } from '../../geometry/girder'
import type { Plan } from '../../plan/types'
import { lineInput } from '../line-input'
import { type Models, placedModels } from '../obstacles'
import { type EdgeModel, edgeStop } from './bound/edge-bound'
import { type SpanBound, spanBounds } from './bound/span-bound'
import { spanStops } from './bound/stops'
import { aloneWith, withLayout } from './layout'
import { fewestSpans, type Graph } from './paths'
import type { Places } from './places'
import type { Aim, Choice, Feet, Layout, Reason } from './types'

export interface SearchCase {
  choice: Choice
  feet: [Feet, Feet]
  graph: Graph
  /** Least number of spans that the bounds leave; null: none. */
  fewest: number | null
  /** Why a span of so many gaps is ruled out wherever it lies. */
  stopped: Map<number, Reason[]>
  /** Why spans at their places were ruled out so far, one reason a rule. */
  clashes: Map<string, Reason>
  /** Why a span at its place is ruled out; null where nothing is known against it. */
  ruledOut: (a: number, b: number) => Reason | null
  layout: (gaps: number[]) => Layout
}

export interface CaseInput {
  plan: Plan
  line: string
  places: Places
  choice: Choice
  ends: [number, number]
  feet: [Feet, Feet]
  aims: Aim[]
  models: Models | undefined
}

/** The longest span worth bounding, in gaps: the basis' limit where it has one. */
function longestSpan(c: CaseInput, spacing: number): number {
  const whole = c.ends[1] - c.ends[0]
  const { maxSpan } = c.plan.basis
  return maxSpan === undefined ? whole : Math.min(whole, Math.floor(maxSpan / spacing + 1e-6))
}

const depthOf = (b: SpanBound): number =>
  b.reaches.reduce(
    (most, r) => Math.max(most, r.freeFall + r.drop + r.extension + r.worker.harnessStretch),
    0,
  )

/** What a span costs at best by the first aim that spans bear on. */
const costOf = (b: SpanBound | null, aims: Aim[], X: number, marginBelow: number): number => {
  const first = aims.find((a) => a !== 'parts') ?? 'clearance'
  const depth = b ? depthOf(b) : 0
  const cost = first === 'tension' ? (b?.tension ?? 0) : depth > 0 ? depth + marginBelow : 0
  return cost > 0 ? cost : X * 1e-9
}

/** Makes the case; bounds every length of span once. `tick` is told after each. */
export function* searchCase(c: CaseInput): Generator<number, SearchCase> {
  const { places, plan } = c
  const stations = places.stations
  const layout = (gaps: number[]): Layout => ({
    gaps,
    stations: gaps.map((g) => stations[g]!),
    feet: c.feet,
    choice: c.choice,
  })
  const made = withLayout(plan, c.line, places.pattern, layout(c.ends))
  const line = made.lines.find((l) => l.id === c.line)!
  const alone = aloneWith(made, line)
  const input = lineInput(alone, line)
  const { planRate } = girderFrame(places.girder)
  const spacing = stations[1]! - stations[0]!
  const most = longestSpan(c, spacing)
  const bounds = spanBounds({ input, longest: Math.max(1, most) * spacing * planRate })
  const cost: (number | null)[] = Array(c.ends[1] - c.ends[0] + 1).fill(null)
  const stopped = new Map<number, Reason[]>()
  for (let n = 1; n < cost.length; n++) {
    const length = n * spacing
    const bound = n <= most ? bounds.midSpan(length * planRate) : null
    const reasons = spanStops(input, plan.basis, plan.units, length, bound)
    if (reasons.length > 0) stopped.set(n, reasons)
    else cost[n] = costOf(bound, c.aims, length, plan.basis.marginBelow)
    if (n % 8 === 0) yield n / cost.length
  }
  const graph: Graph = { from: c.ends[0], to: c.ends[1], fit: places.fit, cost, excluded: new Set() }
  const edges: EdgeModel = {
    plan: alone,
    basis: plan.basis,
    input,
    bounds,
    targets: targetsOf(alone, c.models ? placedModels(alone, c.models) : new Map<string, MeshTarget>()),
    planRate,
    ends: [stations[c.ends[0]]!, stations[c.ends[1]]!],
  }
  const ruledOut = (a: number, b: number): Reason | null => edgeStop(edges, stations[a]!, stations[b]!)
  const fewest = fewestSpans(graph)
  return { choice: c.choice, feet: c.feet, graph, fewest, stopped, clashes: new Map(), ruledOut, layout }
}
