import type { LineInput } from './line-input'
import type { StudiedFall } from './studied-fall'

/**
 * Per span: the worst clearance in time less the worst by energy at the line's own grip, at least 0, m (mechanics
 * section 8). Where either is missing there is nothing to add; the rule on the time method tells that.
 */
export function spanExcess(input: LineInput, own: StudiedFall[]): number[] {
  const worst = (span: number, method: 'energy' | 'dynamic'): number =>
    own.reduce(
      (most, { fall }) =>
        fall.span === span && fall.method === method && fall.clearance !== null
          ? Math.max(most, fall.clearance)
          : most,
      Number.NEGATIVE_INFINITY,
    )
  return Array.from({ length: input.stanchions.length - 1 }, (_, span) => {
    const more = worst(span, 'dynamic') - worst(span, 'energy')
    return Number.isFinite(more) ? Math.max(0, more) : 0
  })
}

/** The excess at a station, m; at a stanchion the greater of both sides. */
export function excessAt(input: LineInput, excess: number[], station: number): number {
  const stations = input.geometry.stations
  let most = 0
  excess.forEach((value, span) => {
    const inside = station >= stations[span]! - 1e-9 && station <= stations[span + 1]! + 1e-9
    if (inside) most = Math.max(most, value)
  })
  return most
}
