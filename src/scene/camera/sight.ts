/**
 * From where to look, so that what is flown to is not hidden: of directions round about, the one nearest to the present
 * one from which it is seen. A reviewer who chooses a clash must see it, not the girder before it.
 */
import { Vector3 } from 'three'
import type { Vec3 } from '../../plan/types'
import type { Shot } from './fit'
import type { Hides } from './solids'

/** Steps round the plumb line, degrees. */
const STEP = 15
/** How far up or down may be looked from, degrees over level; straight up and down the camera's roll is not defined. */
const HEIGHTS = [-60, -40, -25, -12, 0, 12, 25, 40, 60, 80]

/** The present direction, then others, nearest to it first. All of unit length. */
export function directionsAbout(from: Vec3): Vec3[] {
  const present = new Vector3(...from).normalize()
  const round = Math.atan2(present.y, present.x)
  const others: Vector3[] = []
  for (const height of [...HEIGHTS, degrees(Math.asin(present.z))]) {
    for (let turn = 0; turn < 360; turn += STEP) {
      const [a, h] = [round + radians(turn), radians(height)]
      others.push(new Vector3(Math.cos(a) * Math.cos(h), Math.sin(a) * Math.cos(h), Math.sin(h)))
    }
  }
  const apart = (v: Vector3): number => v.angleTo(present)
  others.sort((a, b) => apart(a) - apart(b))
  return [present, ...others].map((v) => v.toArray())
}

const radians = (d: number): number => (d * Math.PI) / 180
const degrees = (r: number): number => (r * 180) / Math.PI

/** What part of the places is seen from an eye, 0 to 1. */
export const partSeen = (places: readonly Vec3[], eye: Vec3, hides: Hides): number =>
  places.filter((place) => !hides(eye, place)).length / Math.max(1, places.length)

/** As much of what is flown to is enough to see what it is. */
const ENOUGH = 0.75

/** The shot from the nearest direction that shows enough of the places; from the one that shows most, where none does. */
export function clearShot(
  places: readonly Vec3[],
  from: Vec3,
  shotFrom: (direction: Vec3) => Shot,
  hides: Hides,
): Shot {
  let best: { shot: Shot; seen: number } | null = null
  for (const direction of directionsAbout(from)) {
    const shot = shotFrom(direction)
    const seen = partSeen(places, shot.position, hides)
    if (seen >= ENOUGH) return shot
    if (!best || seen > best.seen) best = { shot, seen }
  }
  return best?.shot ?? shotFrom(from)
}
