/** The depth of the fall room along a line (mechanics section 8). */
import { placeOf } from '../geometry/line'
import type { ConnectorPart, Worker } from '../plan/types'
import { CORNERS, type Reach, reachAt } from './energy-falls'
import { excessAt } from './excess'
import type { LineInput } from './line-input'
import type { LineStatics } from './line-statics'
import type { ConnectorEnd, FloorPoint, LineSetName } from './results'

/** How many even stations the results tell. */
const FLOOR_STATIONS = 41

/** One worker's reach at one station and corner. */
export interface StationReach extends Reach {
  worker: Worker
  connector: ConnectorPart
  line: LineSetName
  end: ConnectorEnd
  /** Depth below the girder's top without the excess of the time method, m. */
  depth: number
}

/** Depth below the girder's top, m: without the max(0) of free fall, so a short lanyard makes it shallower. */
function depthBelowTop(reach: Reach, worker: Worker, connector: ConnectorPart, marginBelow: number): number {
  const fixed = reach.drop + reach.extension + worker.harnessStretch + marginBelow
  const fall =
    connector.type === 'retractable' ? reach.freeFall : connector.length + worker.dRingHeight - reach.height
  return fixed + fall
}

/** Every worker's reach at a station over the corners of the line's own grip; a string says why one is not known. */
export function reachesAt(
  input: LineInput,
  statics: LineStatics,
  station: number,
  marginBelow: number,
): StationReach[] | string {
  const place = placeOf(input.geometry, station)
  const found: StationReach[] = []
  for (const who of input.workers) {
    for (const corner of CORNERS) {
      if (corner.grip !== input.grip) continue
      const got = reachAt(input, statics, corner, place, who)
      if (!got.ok) return got.why
      const depth = depthBelowTop(got.value, who.worker, who.connector, marginBelow)
      found.push({ ...got.value, ...who, line: corner.line, end: corner.connector, depth })
    }
  }
  return found.length > 0 ? found : 'no worker is on the line'
}

/** The stations of the floor, m along the girder, from the first to the last stanchion. */
export function floorStations(input: LineInput, count = FLOOR_STATIONS): number[] {
  const first = input.geometry.stations[0]!
  const last = input.geometry.stations[input.geometry.stations.length - 1]!
  return Array.from({ length: count }, (_, i) => first + ((last - first) * i) / (count - 1))
}

/** A floor point with the reaches behind it, for the room. */
export interface FloorStation {
  point: FloorPoint
  reaches: StationReach[]
  why: string | null
}

/** The floor: worst over workers and corners at every station, the excess of its span told beside. */
export function floorOf(
  input: LineInput,
  statics: LineStatics,
  marginBelow: number,
  stations: number[],
  excess: number[],
): FloorStation[] {
  return stations.map((station) => {
    const reaches = reachesAt(input, statics, station, marginBelow)
    const more = excessAt(input, excess, station)
    if (typeof reaches === 'string') {
      return { point: { station, depth: null, excess: more }, reaches: [], why: reaches }
    }
    const worst = reaches.reduce((a, b) => (b.depth > a.depth ? b : a))
    const of = { worker: worst.worker.id, line: worst.line, connector: worst.end }
    return { point: { station, depth: worst.depth, excess: more, ...of }, reaches, why: null }
  })
}
