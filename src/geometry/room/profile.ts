/** What the statics say at given stations, made continuous along the line. */
import { monotoneCubic } from './interpolate'
import type { RoomInput, RoomSample } from './types'

/** A stretch of line on which one corner is known throughout. */
export interface Stretch {
  from: number
  to: number
  at: (station: number) => RoomSample
}

const known = (s: RoomSample | { unknown: string } | undefined): s is RoomSample =>
  s !== undefined && 'drop' in s && [s.drop, s.extension, s.height].every(Number.isFinite)

/**
 * The stretches of corner `index`: cut at stanchions, where the drop has a kink, and where a value is missing. Between
 * the given stations a monotone cubic runs through them.
 */
export function stretchesOf(input: RoomInput, index: number): Stretch[] {
  const posts = input.stanchions.map((s) => s.station)
  const runs: { station: number; sample: RoomSample }[][] = [[]]
  for (const { station, samples } of input.stations) {
    const sample = samples[index]
    if (!known(sample)) {
      runs.push([])
      continue
    }
    runs[runs.length - 1]!.push({ station, sample })
    if (posts.some((p) => Math.abs(p - station) < 1e-9)) runs.push([{ station, sample }])
  }
  return runs.filter((run) => run.length > 1 || (run.length === 1 && runs.length < 3)).map(toStretch)
}

function toStretch(run: { station: number; sample: RoomSample }[]): Stretch {
  const x = run.map((r) => r.station)
  const drop = monotoneCubic(
    x,
    run.map((r) => r.sample.drop),
  )
  const extension = monotoneCubic(
    x,
    run.map((r) => r.sample.extension),
  )
  const height = monotoneCubic(
    x,
    run.map((r) => r.sample.height),
  )
  return {
    from: x[0]!,
    to: x[x.length - 1]!,
    at: (s) => ({ drop: drop(s), extension: extension(s), height: height(s) }),
  }
}

/** What a fall in time adds to the depth at a station, m: of two spans that meet there the greater. */
export function excessAt(input: RoomInput, station: number): number {
  const here = input.excess.filter((e) => station >= e.from - 1e-9 && station <= e.to + 1e-9)
  return here.reduce((most, e) => Math.max(most, e.excess), 0)
}

/** Offset of the line from the girder's centreline at a station, m; carried on at the ends. */
export function offsetAt(input: RoomInput, station: number): number {
  const posts = input.stanchions
  let i = 0
  while (i < posts.length - 2 && station > posts[i + 1]!.station) i++
  const a = posts[i]!
  const b = posts[i + 1] ?? a
  const run = b.station - a.station
  const share = run > 0 ? Math.min(1, Math.max(0, (station - a.station) / run)) : 0
  return a.offset + (b.offset - a.offset) * share
}

/** The first reason why a sample is missing, or null. */
export function whyUnknown(input: RoomInput): string | null {
  for (const { station, samples } of input.stations) {
    for (let i = 0; i < input.corners.length; i++) {
      const sample = samples[i]
      if (known(sample)) continue
      const why = sample && 'unknown' in sample ? sample.unknown : 'a figure is not finite'
      return `at station ${station.toFixed(2)} m of line ${input.line}: ${why}`
    }
  }
  return input.stations.length === 0 ? `line ${input.line} has no fall that could be computed` : null
}
