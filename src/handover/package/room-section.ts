/** The fall room cut at one station: its underside, and the body that hangs there. */
import { girderRoll } from '../../drawings/frame'
import type { Point } from '../../drawings/view'
import { type Room, underside } from '../../geometry/room'
import type { Girder } from '../../plan/types'
import type { ObstacleResult } from '../../study/results'
import type { LineFile } from '../input'

/** Widest offset that is looked at, and the step between samples, m. */
const WIDEST = 12
const STEP = 0.05

/** Offset (positive left) and height above the girder top along the underside; empty where nothing swings there. */
export function undersideAt(room: Room, girder: Girder, station: number): Point[] {
  const roll = girderRoll(girder)
  const top = roll.topAt(station)
  const points: Point[] = []
  for (let i = Math.round(-WIDEST / STEP); i <= WIDEST / STEP; i++) {
    const offset = i * STEP
    const [x, y] = roll.point(station, offset)
    const under = underside(room, x, y)
    if (under) points.push([offset, under.z - top])
  }
  return points
}

/** How far the room reaches to either side, station by station: its outline in plan. */
export function roomOutline(room: Room, girder: Girder, stations: number[]): Point[] {
  const roll = girderRoll(girder)
  const cuts = stations.flatMap((station) => {
    const points = undersideAt(room, girder, station)
    const [first, last] = [points[0], points.at(-1)]
    return first && last ? [{ station, right: first[0], left: last[0] }] : []
  })
  const flat = (station: number, offset: number): Point => {
    const [x, y] = roll.point(station, offset)
    return [x, y]
  }
  return [
    ...cuts.map((k) => flat(k.station, k.left)),
    ...[...cuts].reverse().map((k) => flat(k.station, k.right)),
  ]
}

/** Stations nearer than this share a section, m: less than half a body. */
const NEAR = 0.25

/** What leaves more than this under the room does not stand on a section through it, m. */
const FAR = 5

/** The governing fall's attachment and feet, if it is at this station; as offset and height. */
export function bodyAt(file: LineFile, station: number): { attachment: Point; feet: Point } | null {
  const { governing, hangingAt, feetAt } = file.detail
  if (!governing || !hangingAt || !feetAt || Math.abs(governing.station - station) > NEAR) return null
  const roll = girderRoll(file.study.input.girder)
  const [a, f] = [roll.unroll(hangingAt), roll.unroll(feetAt)]
  return { attachment: [a.offset, a.height], feet: [f.offset, f.height] }
}

/** Where the room is deepest, and where it is nearest to what is below: the stations worth a section, each once. */
export function worstStations(
  file: LineFile,
  clashes: Pick<ObstacleResult, 'at' | 'station' | 'gap'>[],
): number[] {
  const roll = girderRoll(file.study.input.girder)
  const deepest = file.results.floor.reduce<{ station: number; depth: number } | null>((best, f) => {
    if (f.depth === null) return best
    const depth = f.depth + Math.max(0, f.excess ?? 0)
    return best && best.depth >= depth ? best : { station: f.station, depth }
  }, null)
  const known = clashes.filter(
    (k): k is typeof k & { station: number; gap: number } =>
      k.station !== null && k.gap !== null && k.gap < FAR,
  )
  // Cut through the thing where it is nearest: the worker who comes so near may fall from a station beside it.
  const near = known.sort((a, b) => a.gap - b.gap).map((k) => (k.at ? roll.unroll(k.at).station : k.station))
  const all = [...near, ...(deepest ? [deepest.station] : [])]
  return all.filter((s, i) => all.findIndex((t) => Math.abs(t - s) < NEAR) === i).slice(0, 4)
}
