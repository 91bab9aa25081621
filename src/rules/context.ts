/**
 * The facts that rules read: plain numbers about the plan's lines, stanchions, tie-backs, workers, loop rows and
 * obstacles, SI units. `study` fills them from geometry and solver; rules compute nothing but the comparison.
 */
import type {
  BracketPart,
  ConnectorPart,
  Girder,
  Grip,
  HardwarePart,
  Line,
  LineAbsorberPart,
  LoopRow,
  Plan,
  Stanchion,
  StanchionPart,
  TieBack,
  TieBackPart,
  Vec3,
  WireRopePart,
  Worker,
} from '../plan/types'
import type { Explained } from '../solver/explain'

/** A number that could not be computed says why, in plain words that end a sentence. */
interface Unknown {
  unknown: string
}

export type Known = number | Unknown

export interface RuleContext {
  plan: Plan
  lines: LineFacts[]
  /** Loop rows that carry a bracket or a tie-back leg, each once. */
  rows: RowFacts[]
  obstacles: ObstacleFacts[]
}

/** Which corner a demand comes from, so that a text can name it. */
export interface Corner {
  method: 'energy' | 'dynamic'
  grip: Grip
  line: 'soft' | 'stiff'
  connector: 'low' | 'high'
  /** Index of the span, or null beside a stanchion or where it does not apply. */
  span: number | null
  worker: string | null
  /** The fall was beside this stanchion (line drop 0). */
  beside?: string
}

/**
 * The worst of many corners. Where a corner could not be computed, `value` is unknown and `atLeast` keeps the worst of
 * the others: it can still make a rule fail, never make it hold.
 */
export interface Demand {
  value: Known
  corner?: Corner
  atLeast?: number
  /** Makes the tree of how the figure came about; only asked for when a person wants to see it. */
  explain?: () => Explained
}

export interface LineFacts {
  line: Line
  girder: Girder
  wireRope: WireRopePart
  absorber: LineAbsorberPart | null
  hardware: HardwarePart[]
  /** One per span: station to station along the girder, m; slope of its chord against the horizontal, degrees >= 0. */
  spans: { length: number; slope: number }[]
  /** Greatest tension in the wire rope, either method, at the line's own grip, N. */
  tension: Demand
  /** The same with the rope held at intermediate stanchions, N. */
  heldTension: Demand
  /** Greatest tension by the energy method at the line's own grip, N. */
  energyTension: Known
  /** Greatest tension by the time method at the line's own grip, N. */
  timeTension: Known
  /** Greatest extension of the line absorber, either method, own grip, m; null: no absorber. */
  absorberExtension: Demand | null
  /** Eye to end stanchion before tensioning, m. */
  eyeOffset: Known
  /** The sum behind the eye offset, made when asked for. */
  explainEyeOffset?: () => Explained
  workers: WorkerFacts[]
  stanchions: StanchionFacts[]
  tieBacks: TieBackFacts[]
}

export interface WorkerFacts {
  worker: Worker
  connector: ConnectorPart
  /** h, m. */
  freeFall: Demand
  /** On one body, either method, own grip, falls beside a stanchion among them, N. */
  arrestForce: Demand
  /** Elastic and torn together, m; the same falls. */
  extension: Demand
  /** Torn length alone, m; the same falls. */
  torn: Demand
}

/** One loop that the bracket's tube passes through. */
interface EngagedLoop {
  /** From 0, in its row. */
  index: number
  station: number
}

export interface StanchionFacts {
  stanchion: Stanchion
  part: StanchionPart
  bracket: BracketPart
  isEnd: boolean
  tieBackCount: number
  /** The row the tube lies in; null where no row is within 50 mm of the stanchion's offset. */
  row: LoopRow | null
  engaged: EngagedLoop[]
  /** Engaged loops before and after the station; one exactly at it counts for neither. */
  beside: { before: number; after: number }
  /** Worst shaft force, either method, own grip, N >= 0. */
  shaft: Demand
  /** Worst axial force downwards, either method, own grip, N. */
  axial: Demand
  /** Worst lift on the bracket (axial force upwards), own grip, N >= 0; absent: none. */
  uplift?: Demand
  /** With the rope held at intermediate stanchions. */
  heldShaft: Demand
  heldAxial: Demand
  /** Greatest pull in one loop over all corners at the line's own grip, N; null: at some corner nothing holds the bracket. */
  loopPull: Demand | null
  /** Straight pull at which one loop of the row yields, N; null without a row. */
  loopCapacity: number | null
  /** Nearest levelling bolt to the girder's edge, m; negative: off the girder. */
  boltEdge: number
}

export interface LegFacts {
  role: 'strap' | 'tensioner'
  row: LoopRow
  /** From 0. */
  index: number
  station: number
  /** Horizontal distances head to loop along and across the girder, m >= 0. */
  along: number
  across: number
  /** Head to loop, m. */
  length: number
  /** From the vertical, degrees. */
  angle: number
  /** Worst force, either method, own grip, N. */
  force: Demand
  /** On the far side of the stanchion from the line. */
  farSide: boolean
}

export interface TieBackFacts {
  tieBack: TieBack
  part: TieBackPart
  stanchion: Stanchion
  /** Height of its stanchion, m. */
  height: number
  legs: [LegFacts, LegFacts]
  /** Loops that lie between the two; unknown where they are in different rows. */
  loopsBetween: Known
  /** Both legs and one turn on the spool, m. */
  strapNeeded: Known
}

export interface RowFacts {
  row: LoopRow
  girder: Girder
  /** Ids of the lines that use it. */
  lines: string[]
}

export interface ObstacleFacts {
  /** Id of the obstacle, or of the girder where a girder is the obstacle. */
  id: string
  name: string
  kind: string
  /** Own margin that the gap already takes off, m. */
  margin: number
  /** Least vertical distance less the obstacle's own margin, m; null: no plan area is shared. */
  gap: Known | null
  /** Horizontal distance where no plan area is shared, m. */
  horizontal: number | null
  at: Vec3 | null
  line: string | null
  station: number | null
  worker: string | null
  /** The sum behind the gap, made when asked for. */
  explain?: () => Explained
}

/** True where the number could be computed; NaN and infinities count as not. */
export const isKnown = (value: Known): value is number => typeof value === 'number' && Number.isFinite(value)

/** Why a value is not known. */
export const whyUnknown = (value: Known): string =>
  typeof value === 'number' ? 'the figure is not a finite number' : value.unknown

/**
 * The greatest of several corners. One that could not be computed makes the whole unknown; the greatest of the others
 * stays as `atLeast`. An empty list is unknown with `none` as the reason.
 */
export function worstDemand(corners: Demand[], none = 'no fall was computed'): Demand {
  let worst: (Demand & { value: number }) | null = null
  let missing: string | null = corners.length === 0 ? none : null
  for (const c of corners) {
    if (!isKnown(c.value)) missing ??= whyUnknown(c.value)
    else if (worst === null || c.value > worst.value) worst = { ...c, value: c.value }
  }
  if (missing === null && worst !== null) return worst
  const { value: atLeast, ...rest } = worst ?? { value: null }
  return { ...rest, value: { unknown: missing ?? none }, ...(atLeast === null ? {} : { atLeast }) }
}
