/**
 * The plan document: everything needed to recompute every number. SI units throughout (metres, newtons, kilograms,
 * seconds, degrees Celsius, angles in degrees), axes right-handed with z up. `schema.ts` reads it from text; these are
 * the types that the rest of the program works with. Long on purpose: it is the file format, read from top to bottom.
 */

export type Vec2 = [number, number]
export type Vec3 = [number, number, number]

/** A figure that is never one number: both ends are used where each hurts. */
export interface Range {
  low: number
  high: number
}

export interface Plan {
  format: 'fallroom-plan'
  version: 1
  title: string
  site?: string
  notes?: string
  /** Display only; the numbers in the file are SI whatever this says. */
  units: 'us' | 'si'
  basis: Basis
  girders: Girder[]
  /** Further walking surfaces (forms, panels); the top of a girder is one by itself. */
  decks?: Deck[]
  lines: Line[]
  workers: Worker[]
  obstacles: Obstacle[]
  /** Every part that the plan uses, each with the source of its figures. */
  parts: Part[]
  /** Inspections, approvals, rescue plans; append-only and outside the plan's hash. */
  records?: PlanRecord[]
}

/** Limits and margins, each with where it comes from in `sources`. */
export interface Basis {
  name: 'us' | 'ca' | 'eu' | 'custom'
  /** Strength over demand. */
  safetyFactor: number
  /** N on one body. */
  maxArrestForce: number
  maxFreeFall: number
  /** m of connector extension; line drop does not count. */
  maxDeceleration: number
  /** m kept free under the lowest point of the body. */
  marginBelow: number
  marginSide: number
  /** m, half-width of a hanging body. */
  bodyRadius: number
  /** Degrees from the vertical. */
  minTieBackAngle: number
  minLoopsEngaged: number
  /** Loops on either side of the bracket. */
  minLoopsBeside: number
  minBarDiameter: number
  /** m; a levelling bolt nearer an edge than this needs a plate. */
  boltEdge: number
  plateThickness: number
  /** m, wire-rope eye from its end stanchion before tensioning. */
  eyeOffset: Range
  /** Degrees, line against the horizontal. */
  maxSlope: number
  /** m between neighbouring stanchions, where the parts' documentation limits it. */
  maxSpan?: number
  sources: Record<string, string>
}

export interface Girder {
  id: string
  name: string
  /** Ends of the centreline of the TOP surface. */
  start: Vec3
  end: Vec3
  material: 'concrete' | 'steel'
  section: GirderSection
  loops: LoopRow[]
}

export interface GirderSection {
  topWidth: number
  topThickness: number
  webThickness: number
  bottomWidth: number
  bottomThickness: number
  depth: number
}

/** Looped bars that project from a girder's top, evenly spaced along it. */
export interface LoopRow {
  id: string
  /** Station of the first loop, m. */
  first: number
  spacing: number
  count: number
  /** m, positive to the left looking from start to end. */
  offset: number
  barDiameter: number
  /** Pa */
  yieldStress: number
  /** Projection above the top, m. */
  height: number
}

export interface Deck {
  id: string
  name: string
  outline: Vec2[]
  elevation: number
}

export interface Line {
  id: string
  name: string
  girder: string
  /** In order along the line; first and last are the end stanchions. */
  stanchions: Stanchion[]
  tieBacks: TieBack[]
  wireRope: string
  /** Part id of the in-line energy absorber, or null for none. */
  absorber: string | null
  /** The tensioner stands at the same end. */
  absorberAt: 'start' | 'end'
  /** Part ids in series with the wire rope: shackles, tensioner, clamp. */
  hardware: string[]
  /** N, nominal. */
  pretension: number
  /** Fraction: 0.1 is plus or minus 10 %. */
  pretensionTolerance: number
  installTemperature: number
  serviceTemperature: Range
  /** Of the wire rope at intermediate stanchions; absent: sliding. */
  grip?: Grip
  /** How many workers the line must arrest together. */
  workersAtOnce: number
}

export type Grip = 'sliding' | 'held'

export interface Stanchion {
  id: string
  role: 'end' | 'intermediate'
  station: number
  offset: number
  part: string
  bracket: string
  /** Thickness of plates under its levelling bolts, m; absent or 0: none. */
  plate?: number
}

/** One loop: its row on the line's girder and its index from 0. */
export interface LoopRef {
  row: string
  index: number
}

export interface TieBack {
  id: string
  stanchion: string
  part: string
  strapLoop: LoopRef
  tensionerLoop: LoopRef
}

export interface Worker {
  id: string
  name: string
  line: string
  /** kg, dressed, with tools. */
  mass: number
  /** Dorsal attachment above the feet, standing, m. */
  dRingHeight: number
  /** Stretch and D-ring shift together, m. */
  harnessStretch: number
  connector: string
}

interface PartCommon {
  id: string
  name: string
  source: string
}

export interface WireRopePart extends PartCommon {
  kind: 'wire-rope'
  diameter: number
  construction: string
  breakingStrength: number
  /** EA, N */
  axialStiffness: Range
  massPerMetre: number
  thermalExpansion: number
  /** Efficiency of the end termination, 0..1. */
  termination: number
  /** Constructional stretch of a new rope, fraction; absent: 0.003. */
  constructionalStretch?: number
}

export interface LineAbsorberPart extends PartCommon {
  kind: 'line-absorber'
  onset: Range
  full: Range
  maxExtension: number
  breakingStrength: number
  length: number
}

export interface ConnectorPart extends PartCommon {
  kind: 'connector'
  type: 'lanyard' | 'retractable'
  /** m; of a retractable: its lock-off distance. */
  length: number
  stiffness: number
  plateau: Range
  maxExtension: number
  maxForce: number
  ratedFreeFall: number
  ratedMass?: Range
}

export interface StanchionPart extends PartCommon {
  kind: 'stanchion'
  /** Wire rope above the girder top, m. */
  height: number
  /** N/m along the line. */
  headStiffness: number
  /** N at the head along the line, ultimate. */
  headCapacity: number
  axialCapacity: number
  mass: number
}

export interface BracketPart extends PartCommon {
  kind: 'bracket'
  tubeLength: number
  boltsAlong: number
  boltsAcross: number
  upliftCapacity: number
}

export interface TieBackPart extends PartCommon {
  kind: 'tie-back'
  length: number
  /** One turn on the ratchet spool, m. */
  wrapLength: number
  /** N per unit strain of one leg. */
  stiffness: number
  breakingStrength: number
}

export interface HardwarePart extends PartCommon {
  kind: 'hardware'
  breakingStrength: number
  length: number
}

export type Part =
  | WireRopePart
  | LineAbsorberPart
  | ConnectorPart
  | StanchionPart
  | BracketPart
  | TieBackPart
  | HardwarePart

export type PartKind = Part['kind']
export type PartOf<K extends PartKind> = Extract<Part, { kind: K }>

interface ObstacleCommon {
  id: string
  name: string
  /** m that must stay free around it. */
  margin?: number
}

export interface GroundObstacle extends ObstacleCommon {
  kind: 'ground'
  elevation: number
}

export interface WaterObstacle extends ObstacleCommon {
  kind: 'water'
  elevation: number
  depth?: number
}

export interface BoxObstacle extends ObstacleCommon {
  kind: 'box'
  center: Vec3
  size: Vec3
  /** Degrees about z, counter-clockwise from above. */
  turn?: number
  /** A path that its centre may move along. */
  travel?: Vec3[]
}

/** Road or rail traffic: a strip along a path that must stay free up to `clearHeight` above it. */
export interface LaneObstacle extends ObstacleCommon {
  kind: 'lane'
  path: Vec3[]
  width: number
  clearHeight: number
}

/** A model file that lies beside the plan file. */
export interface MeshObstacle extends ObstacleCommon {
  kind: 'mesh'
  file: string
  at?: Vec3
  turn?: number
  scale?: number
  /** Which axis of the file points up; absent: z. */
  upAxis?: 'y' | 'z'
  /** sha256 of the file when it was placed; a different file is told. */
  fileHash?: string
}

/** Bracing between two girders at a station of the first: two diagonals and a bottom strut of square bars. */
export interface CrossFrameObstacle extends ObstacleCommon {
  kind: 'cross-frame'
  between: [string, string]
  station: number
  /** Side of the square bars, m. */
  barSize: number
}

export type Obstacle =
  | GroundObstacle
  | WaterObstacle
  | BoxObstacle
  | LaneObstacle
  | MeshObstacle
  | CrossFrameObstacle

interface RecordCommon {
  id: string
  /** ISO 8601 */
  at: string
  by: string
  note?: string
}

export interface RescuePlanRecord extends RecordCommon {
  kind: 'rescue-plan'
  line: string
  method: string
  gear: string
  people: number
  minutes: number
}

export interface ApprovalRecord extends RecordCommon {
  kind: 'approval'
  planHash: string
}

export interface AsBuiltRecord extends RecordCommon {
  kind: 'as-built'
  line: string
  stations: Record<string, number>
  tension: number
}

export interface InspectionRecord extends RecordCommon {
  kind: 'inspection'
  line: string
  items: { id: string; result: 'pass' | 'fail' | 'n/a'; note?: string }[]
  /** Names of photo files that belong to it. */
  photos?: string[]
}

export interface DailyRecord extends RecordCommon {
  kind: 'daily'
  line: string
  tension: number | null
  passed: boolean
}

export interface ServiceRecord extends RecordCommon {
  kind: 'out-of-service' | 'in-service' | 'retired'
  line: string
  reason: string
}

/** What somebody decided about a finding. It never changes the finding's status. */
export interface FindingNoteRecord extends RecordCommon {
  kind: 'finding-note'
  rule: string
  subject: string
  text: string
}

export type PlanRecord =
  | RescuePlanRecord
  | ApprovalRecord
  | AsBuiltRecord
  | InspectionRecord
  | DailyRecord
  | ServiceRecord
  | FindingNoteRecord
