/**
 * The results document: what a study of a plan says. The fields of the published contract keep their names; whatever
 * is added is optional for a reader. A number that could not be computed is null, with a finding `unknown` that says why.
 */
import type { Grip, Vec3 } from '../plan/types'
import type { Finding } from '../rules/finding'

export type LineSetName = 'soft' | 'stiff'
export type ConnectorEnd = 'low' | 'high'
export type { Finding, FindingStatus } from '../rules/finding'

export interface Results {
  format: 'fallroom-results'
  version: 1
  plan: string
  planHash: string
  lines: LineResults[]
  obstacles: ObstacleResult[]
  /** Left out while something is being dragged. */
  rooms?: RoomResults
  findings: Finding[]
}

/** How large the fall rooms are: each line's, and everything that lies in any of them. */
export interface RoomResults {
  lines: ({ id: string } & RoomFigures)[]
  /** `shared`: what lies in more than one line's room, counted once less for each, m3. */
  plan: RoomFigures & { shared: number | null }
}

export interface RoomFigures {
  /** m3, under the girder's top. */
  volume: number | null
  /** m2 in plan. */
  footprint: number | null
  lowest: Vec3 | null
  /** Why they are not known. */
  unknown?: string
}

export interface LineResults {
  id: string
  installed: {
    tension: number | null
    /** Below the chord at mid-span, one per span, m. */
    sag: (number | null)[]
    /** Unstretched, between the rope's two ends, m. */
    wireRopeLength: number | null
    eyeOffset: number | null
    takeUp: number | null
  }
  falls: Fall[]
  governing: {
    tension: number | null
    arrestForce: number | null
    clearance: number | null
    wireRopeSafetyFactor: number | null
  }
  stanchions: StanchionResult[]
  /** Depth of the fall room below the girder top, at even stations. */
  floor: FloorPoint[]
}

export interface FloorPoint {
  station: number
  depth: number | null
  excess: number | null
  /** Worker, line set and connector end that govern here. */
  worker?: string
  line?: LineSetName
  connector?: ConnectorEnd
}

export interface Fall {
  method: 'energy' | 'dynamic'
  grip: Grip
  line: LineSetName
  connector: ConnectorEnd
  span: number
  station: number
  worker: string
  workers: number
  freeFall: number | null
  /** On one body, N. */
  arrestForce: number | null
  /** Elastic and torn together, m. */
  connectorExtension: number | null
  /** Point of attachment, down from the same set's own unloaded line, m. */
  lineDrop: number | null
  /** Greatest in the wire rope, N. */
  tension: number | null
  absorberExtension: number | null
  totalFall: number | null
  clearance: number | null
  /** Torn length of the connector, m. */
  connectorTorn?: number
  /** Why the figures are null or mean nothing past some point. */
  note?: string
}

export interface StanchionResult {
  id: string
  head: { along: number | null; across: number | null; down: number | null }
  tieBackForce: number | null
  legForces: (number | null)[]
  tieBackAngle: number | null
  shaftForce: number | null
  axial: number | null
  baseMoment: number | null
  engagedLoops: number
  /** Pull in each engaged loop by station; null where nothing can hold the bracket. */
  loopForces: number[] | null
}

export interface ObstacleResult {
  id: string
  /** Least vertical distance less the obstacle's own margin; negative: clash; null: no shared plan area. */
  gap: number | null
  at: Vec3 | null
  line: string | null
  station: number | null
  /** Horizontal distance where the plan areas do not meet, m. */
  horizontal?: number | null
  /** Least distance in any direction, m; 0 where they touch. */
  nearest?: number | null
  /** Where that is, on the obstacle; whose fall from which station comes so near. */
  nearestAt?: { at: Vec3; line: string; station: number; worker: string } | null
  /** Worker, line set and connector end that govern. */
  worker?: string | null
  corner?: { line: LineSetName; connector: ConnectorEnd } | null
  /** Of an obstacle that travels: where its centre is at the worst. */
  centre?: Vec3
  /** Why the gap is not known. */
  unknown?: string
  /** What a reader must know about this figure. */
  note?: string
}
