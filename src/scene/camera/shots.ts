/** The shots that a key or a command asks for: each a direction and what must be in the picture. */
import { girderFrame } from '../../geometry/girder'
import type { Girder, Plan, Vec3 } from '../../plan/types'
import type { Ref } from '../../state/refs'
import type { CameraRequest, CameraView } from '../../state/window-state'
import type { LineDetail } from '../../study/details'
import type { Results } from '../../study/results'
import { lowestLevel } from '../extent'
import { overGirder } from '../place'
import { frameShot, type Lens, type Shot } from './fit'
import { refPoints } from './ref-points'
import { clearShot } from './sight'
import { sightPoints } from './sight-points'
import { solidsOf } from './solids'

export interface ShotSource {
  plan: Plan
  /** The line that is looked at. */
  line: string | null
  results: Results | null
  details: readonly LineDetail[]
  /** What is not shown, by id, and so hides nothing. */
  hidden: readonly string[]
  /** Where travelling boxes stand. */
  places: ReadonlyMap<string, Vec3>
  /** Triangles of a model that was read. */
  model: (file: string) => Float32Array | null
}

/** Depth under a girder's top that the opening shot keeps in view, m: room for a fall and what is below. */
const BELOW = 5

/** The shot for a request, or null where what it asks for is not there. What is flown to is seen, see `clearShot`. */
export function shotOf(to: CameraRequest['to'], source: ShotSource, lens: Lens, from: Vec3): Shot | null {
  if (typeof to === 'string') return viewShot(to, source, lens)
  if ('point' in to) return pointShot(to.point, source, lens, from)
  return refShot(to.ref, source, lens, from)
}

function refShot(ref: Ref, source: ShotSource, lens: Lens, from: Vec3): Shot | null {
  const { plan, hidden } = source
  const points = refPoints(plan, ref)
  if (points.length === 0) return null
  const hides = solidsOf({ ...source, without: [...hidden, ref.id] })
  return clearShot(sightPoints(plan, ref), from, (way) => frameShot(points, way, lens), hides)
}

/** A place alone: something may stand on it or hang down to it, so what is just over it counts as well. */
function pointShot(point: Vec3, source: ShotSource, lens: Lens, from: Vec3): Shot {
  const [x, y, z] = point
  const places: Vec3[] = [point, [x, y, z + 0.3]]
  const hides = solidsOf({ ...source, without: source.hidden })
  return clearShot(places, from, (way) => frameShot(around(point, 2.5), way, lens), hides)
}

function viewShot(view: CameraView, source: ShotSource, lens: Lens): Shot | null {
  const girder = focusGirder(source)
  if (!girder) return frameShot(around([0, 0, 0], 10), [1, -1.6, 0.8], lens)
  if (view === 'worst') return worstShot(source, girder, lens) ?? viewShot('home', source, lens)
  const points =
    view === 'home' ? [...girderPoints(girder), ...groundPoint(source.plan, girder)] : girderPoints(girder)
  const shot = frameShot(points, direction(view, source, girder), lens)
  return view === 'home' ? overGround(shot, source.plan) : shot
}

function focusGirder({ plan, line }: ShotSource): Girder | undefined {
  const of = plan.lines.find((l) => l.id === line) ?? plan.lines[0]
  return plan.girders.find((g) => g.id === of?.girder) ?? plan.girders[0]
}

/** What the shots of a line hold: its girder whole, a post's height above it and room below. */
function girderPoints(girder: Girder): Vec3[] {
  const { length } = girderFrame(girder)
  return [0, length].flatMap((s) => [overGirder(girder, s, 0, 1.2), overGirder(girder, s, 0, -BELOW)])
}

/** What lies under the middle of a girder, as far as it can be near. */
function groundPoint(plan: Plan, girder: Girder): Vec3[] {
  const ground = lowestLevel(plan)
  if (ground === null) return []
  const { length } = girderFrame(girder)
  const [x, y, z] = overGirder(girder, length / 2, 0, 0)
  return [[x, y, Math.max(ground, z - 0.4 * length)]]
}

/** The side of the girder with fewer others before it: +1 is its left. */
function openSide({ plan }: ShotSource, girder: Girder): 1 | -1 {
  const { left, origin } = girderFrame(girder)
  const others = plan.girders.filter((g) => g.id !== girder.id)
  const side = others.map((g) => (g.start[0] - origin[0]) * left[0] + (g.start[1] - origin[1]) * left[1])
  return side.filter((d) => d > 0.1).length < side.filter((d) => d < -0.1).length ? 1 : -1
}

function direction(view: Exclude<CameraView, 'worst'>, source: ShotSource, girder: Girder): Vec3 {
  const { along, left } = girderFrame(girder)
  const side = openSide(source, girder)
  const mix = (a: number, l: number, z: number): Vec3 => [
    along[0] * a + left[0] * l * side,
    along[1] * a + left[1] * l * side,
    z,
  ]
  const backward = side > 0 ? 1 : -1
  switch (view) {
    case 'home':
      return mix(backward * 0.86, 1, -0.02)
    case 'along':
      return mix(-1, 0.12, 0.16)
    case 'across':
      return mix(0, 1, 0)
    case 'above':
      return mix(0, 0.002, 1)
    case 'below':
      return mix(0, 0.002, -1)
  }
}

/** A shot is lifted where it would stand under the ground. */
function overGround(shot: Shot, plan: Plan): Shot {
  const ground = lowestLevel(plan)
  if (ground === null) return shot
  const [x, y, z] = shot.position
  return { ...shot, position: [x, y, Math.max(z, ground + 0.8)] }
}

/** At the least gap, seen from the open side a little above it. */
function worstShot(source: ShotSource, girder: Girder, lens: Lens): Shot | null {
  const gaps = (source.results?.obstacles ?? []).filter((o) => o.gap !== null && o.at !== null)
  gaps.sort((a, b) => a.gap! - b.gap!)
  const at = gaps[0]?.at ?? source.details.find((d) => d.id === source.line)?.feetAt
  if (!at) return null
  const top = girder.start[2] + 1
  const points = [...around(at, 2), [at[0], at[1], Math.max(top, at[2])] as Vec3]
  const [x, y] = direction('home', source, girder)
  const hides = solidsOf({ ...source, without: source.hidden })
  return clearShot([at], [x, y, 0.08], (way) => frameShot(points, way, lens), hides)
}

/** The corners of a cube about a point, `reach` to each side, m. */
function around([x, y, z]: Vec3, reach: number): Vec3[] {
  return [-reach, reach].flatMap((dx) =>
    [-reach, reach].flatMap((dy) => [-reach, reach].map((dz): Vec3 => [x + dx, y + dy, z + dz])),
  )
}
