/**
 * Free falls as pictures. The solver starts a body where its connector comes taut; what lies before that is known in
 * closed form, z = z0 - g t^2/2, with everything else at rest, and is put into the history here.
 */
import { GRAVITY } from '../../solver/model'
import type { FallHistory } from '../../solver/time/types'

/** Between two pictures, and how long bodies are seen standing before the first steps off, s. */
const FRAME = 0.008
const STANDING = 0.3

/** A body that is in the air before the solver takes it over at `frame`. */
export interface FreeFall {
  frame: number
  body: number
  /** How long it has fallen by then, s. */
  lasts: number
}

/** One picture of the longer history: a frame of the old one, its time, and bodies that stand elsewhere. */
interface Shot {
  frame: number
  at: number
  bodies: { body: number; rise: number; speed: number }[]
}

const z = (h: FallHistory, frame: number, body: number): number => h.workerZ[frame * h.workers + body]!

/** Free falls under way when the history begins. Heights and delays (s) by body. */
export function firstFalls(h: FallHistory, freeFalls: number[], delays: number[]): FreeFall[] {
  return freeFalls.flatMap((height, body) => {
    const lasts = Math.sqrt((2 * height) / GRAVITY) - delays[body]!
    const moves = h.frames > 1 && Math.abs(z(h, 1, body) - z(h, 0, body)) > 1e-6
    return lasts > 0 && moves ? [{ frame: 0, body, lasts }] : []
  })
}

/** Bodies that fall in turn are found at the end of their free fall from one picture to the next. */
export function laterFalls(h: FallHistory): FreeFall[] {
  return Array.from({ length: h.workers }, (_, body) => body).flatMap((body) => {
    let frame = 1
    while (frame < h.frames && Math.abs(z(h, frame, body) - z(h, frame - 1, body)) < 1e-6) frame++
    if (frame < 2 || frame >= h.frames) return []
    const height = z(h, frame - 1, body) - z(h, frame, body)
    return height > 0.1 ? [{ frame, body, lasts: Math.sqrt((2 * height) / GRAVITY) }] : []
  })
}

/** By how much the time of the old history has moved in the longer one, s. */
export const delayAt = (falls: FreeFall[], h: FallHistory, time: number): number =>
  falls.reduce((sum, f) => sum + (f.frame > 0 && h.times[f.frame]! <= time + 1e-9 ? f.lasts : 0), 0)

function shotsBefore(falls: FreeFall[], frame: number, start: number): Shot[] {
  const lasts = Math.max(...falls.map((f) => f.lasts))
  const long = lasts + (frame === 0 ? STANDING : 0)
  const count = Math.max(1, Math.round(long / FRAME))
  return Array.from({ length: count }, (_, i) => {
    const left = (long * (count - i)) / count
    const bodies = falls.map((f) => {
      const fallen = Math.max(0, f.lasts - left)
      return {
        body: f.body,
        rise: (GRAVITY * (f.lasts ** 2 - fallen ** 2)) / 2,
        speed: GRAVITY * fallen,
      }
    })
    return { frame, at: start + long - left, bodies }
  })
}

function shotsOf(h: FallHistory, first: FreeFall[], later: FreeFall[]): Shot[] {
  const shots: Shot[] = []
  if (first.length > 0) {
    const long = Math.max(...first.map((f) => f.lasts)) + STANDING
    shots.push(...shotsBefore(first, 0, h.times[0]! - long))
  }
  for (let frame = 0; frame < h.frames; frame++) {
    const here = later.filter((f) => f.frame === frame)
    const at = h.times[frame]! + delayAt(later, h, h.times[frame]!)
    for (const f of here) shots.push(...shotsBefore([f], frame, at - f.lasts))
    shots.push({ frame, at, bodies: [] })
  }
  return shots
}

/** The history with every free fall in it. Rope, forces and other bodies stay as they are at the end of the free fall. */
export function withFreeFalls(
  h: FallHistory,
  first: FreeFall[],
  later: FreeFall[],
  masses: number[],
): FallHistory {
  const shots = shotsOf(h, first, later)
  const copied = <A extends Float32Array | Float64Array>(from: A, each: number): A => {
    const to = new (from.constructor as new (n: number) => A)(shots.length * each)
    shots.forEach((s, i) => {
      // Before a later body's free fall ends the rest is as in the picture before it.
      const frame = s.bodies.length > 0 && s.frame > 0 ? s.frame - 1 : s.frame
      to.set(from.subarray(frame * each, (frame + 1) * each), i * each)
    })
    return to
  }
  const longer: FallHistory = {
    ...h,
    frames: shots.length,
    times: Float64Array.from(shots, (s) => s.at),
    x: copied(h.x, h.nodes),
    z: copied(h.z, h.nodes),
    tension: copied(h.tension, h.nodes - 1),
    workerX: copied(h.workerX, h.workers),
    workerZ: copied(h.workerZ, h.workers),
    connectorForce: copied(h.connectorForce, h.workers),
    connectorExtension: copied(h.connectorExtension, h.workers),
    headShift: copied(h.headShift, 2),
    absorberExtension: copied(h.absorberExtension, 1),
    energies: copied(h.energies, 4),
  }
  for (const [i, s] of shots.entries()) placeFalling(longer, h, s, i, masses)
  return longer
}

/** Puts the falling bodies of one picture where they are, and what they trade into the books. */
function placeFalling(longer: FallHistory, h: FallHistory, shot: Shot, i: number, masses: number[]): void {
  for (const b of shot.bodies) {
    longer.workerZ[i * h.workers + b.body] = z(h, shot.frame, b.body) + b.rise
    const mass = masses[b.body]!
    const whole = b.rise + b.speed ** 2 / (2 * GRAVITY)
    // At the very start the books already hold the speed at the end of this fall.
    const kinetic = (mass * b.speed ** 2) / 2 - (shot.frame === 0 ? mass * GRAVITY * whole : 0)
    longer.energies[4 * i] = longer.energies[4 * i]! + kinetic
    longer.energies[4 * i + 1] = longer.energies[4 * i + 1]! + mass * GRAVITY * b.rise
    const each = i * h.workers + b.body
    longer.connectorForce[each] = 0
    longer.connectorExtension[each] = Math.min(0, longer.connectorExtension[each]! - b.rise)
  }
}
