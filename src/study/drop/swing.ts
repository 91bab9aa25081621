import type { Top } from '../../geometry/gaps'
import { placeOf } from '../../geometry/line'
import { standingReach, walkingSurface } from '../../geometry/room/surface'
import type { ConnectorPart, Plan, Vec2, Worker } from '../../plan/types'
import { GRAVITY } from '../../solver/model'
import type { LineInput } from '../line-input'
import { beneath } from './beneath'
import type { Swing } from './types'

/** Places along the arc that are looked at for something in the way. */
const LOOKS = 60

/**
 * The swing fall of a worker who stands as far from the line as the walking surface and the connector allow: a pendulum
 * about the sagged attachment, drop = r (1 - cos a), sin a = offset/r, v = sqrt(2 g drop). `attachment` is its
 * elevation, `extension` the connector's, m.
 */
export function swingOf(
  plan: Plan,
  tops: Top[],
  input: LineInput,
  station: number,
  who: { worker: Worker; connector: ConnectorPart },
  attachment: number,
  height: number,
  extension: number,
): Swing | null {
  const { worker, connector } = who
  const place = placeOf(input.geometry, station)
  const left = input.geometry.frame.left
  const surface = walkingSurface(plan, input.girder)
  const from: Vec2 = [place.top[0], place.top[1]]
  const edges = [1, -1].map((side) => standingReach(surface, from, [side * left[0], side * left[1]]))
  const reach = Math.sqrt(Math.max(0, connector.length ** 2 - (worker.dRingHeight - height) ** 2))
  const side = edges[0]! >= edges[1]! ? 1 : -1
  const offset = Math.min(Math.max(...edges), connector.type === 'lanyard' ? reach : Number.POSITIVE_INFINITY)
  const slack = connector.type === 'retractable' ? Math.max(0, height - worker.dRingHeight) : 0
  const radius = connector.length + slack + extension
  if (!(offset > 0.01) || !(radius > 0)) return null
  const start = Math.asin(Math.min(1, offset / radius))
  const drop = radius * (1 - Math.cos(start))
  const body = worker.harnessStretch + worker.dRingHeight
  for (let i = 0; i <= 2 * LOOKS; i++) {
    // From the start on one side through the bottom to as far on the other.
    const a = start * (1 - i / LOOKS)
    const x = place.top[0] + side * left[0] * (radius + body) * Math.sin(a)
    const y = place.top[1] + side * left[1] * (radius + body) * Math.sin(a)
    const feet = attachment - (radius + body) * Math.cos(a)
    const first = beneath(tops, x, y, place.top[2])[0]
    if (first && first.top > feet) {
      const lost = radius * (Math.cos(a) - Math.cos(start))
      const speed = Math.sqrt(2 * GRAVITY * Math.max(0, lost))
      return {
        radius,
        offset,
        drop,
        speed: Math.sqrt(2 * GRAVITY * drop),
        strikes: { what: first, speed, elevation: feet },
      }
    }
  }
  return { radius, offset, drop, speed: Math.sqrt(2 * GRAVITY * drop), strikes: null }
}
