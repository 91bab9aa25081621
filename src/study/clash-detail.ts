/** What the picture of one clash needs: the room cut there, and the sum of distances of the fall that governs. */
import { type Room, undersideAcross } from '../geometry/room'
import type { Vec3 } from '../plan/types'
import { excessAt } from './excess'
import { reachesAt } from './floor'
import type { LineStudy } from './line-study'
import type { ConnectorEnd, LineSetName } from './results'

export interface ClashPlace {
  obstacle: string
  gap: number | null
  /** Of something that travels: where it stands at the worst. */
  centre?: Vec3
  line: string
  station: number
  worker: string | null
  corner: { line: LineSetName; connector: ConnectorEnd } | null
}

export interface ClashDetail {
  line: string
  girder: string
  station: number
  /** Offset (m, positive left) and height above the girder's top along the underside. */
  underside: [number, number][]
  /** Summands of the depth below the girder's top, m; null where that fall is not known. */
  stack: {
    freeFall: number
    lineDrop: number
    connectorExtension: number
    harnessStretch: number
    marginBelow: number
    excess: number
  } | null
  /** Point of attachment and feet, as offset and height above the girder's top; null where not known. */
  attachment: [number, number] | null
  feet: [number, number] | null
}

/** The detail of a clash from the study of its line; null where the line is not there. */
export function clashDetail(
  line: LineStudy | undefined,
  room: Room | undefined,
  at: ClashPlace,
): ClashDetail | null {
  if (!line || !room) return null
  const { stations, offsets } = line.input.geometry
  const station = Math.min(Math.max(at.station, stations[0]!), stations[stations.length - 1]!)
  const reaches = reachesAt(line.input, line.statics, station, line.marginBelow)
  const known = typeof reaches === 'string' ? [] : reaches
  const fall =
    known.find(
      (r) => r.worker.id === at.worker && r.line === at.corner?.line && r.end === at.corner?.connector,
    ) ?? known.reduce<(typeof known)[number] | null>((a, b) => (a && a.depth >= b.depth ? a : b), null)
  const excess = excessAt(line.input, line.excess, station)
  const offset = offsetAt(stations, offsets, station)
  const base = {
    line: line.id,
    girder: line.input.girder.id,
    station,
    underside: undersideAcross(room, station),
  }
  if (!fall) return { ...base, stack: null, attachment: null, feet: null }
  const { harnessStretch } = fall.worker
  const { marginBelow } = line
  return {
    ...base,
    stack: {
      freeFall: fall.depth - fall.drop - fall.extension - harnessStretch - marginBelow,
      lineDrop: fall.drop,
      connectorExtension: fall.extension,
      harnessStretch,
      marginBelow,
      excess,
    },
    attachment: [offset, fall.height - fall.drop],
    feet: [offset, -(fall.depth - marginBelow)],
  }
}

function offsetAt(stations: number[], offsets: number[], station: number): number {
  let i = 0
  while (i < stations.length - 2 && station > stations[i + 1]!) i++
  const share = (station - stations[i]!) / (stations[i + 1]! - stations[i]!)
  return offsets[i]! + (offsets[i + 1]! - offsets[i]!) * share
}
