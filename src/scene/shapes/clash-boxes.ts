/**
 * What of the plan a room enters, as unit cubes in space: a matrix from plan coordinates into each cube, for the skin's
 * shader, which cuts out whatever lies in one of them. An obstacle's own margin counts as part of it.
 */
import { Box3, Matrix4, Vector3 } from 'three'
import { type Bar, crossFrameBars } from '../../geometry/gaps/girder-solid'
import type { BoxObstacle, Girder, LaneObstacle, Obstacle, Plan, Vec3 } from '../../plan/types'
import { girderMatrix } from '../place'

/** More clashes than this are told in the list, not cut out: a shader's uniforms are finite. */
export const MOST_BOXES = 24

/** Half-size of the block that stands for the ground, m. */
const WIDE = 5000

/** Cubes of the obstacles and girders whose ids are given. `at` tells where a travelling box stands. */
export function clashBoxes(plan: Plan, ids: readonly string[], at: ReadonlyMap<string, Vec3>): Matrix4[] {
  const obstacles = plan.obstacles.filter((o) => ids.includes(o.id))
  const girders = plan.girders.filter((g) => ids.includes(g.id))
  // Bars last: they are many and thin, and have a colour of their own besides.
  const bars = obstacles.flatMap((o) => barCubes(plan, o))
  const cubes = [
    ...obstacles.flatMap((o) => cubesOf(o, at.get(o.id))),
    ...girders.flatMap(girderCubes),
    ...bars,
  ]
  return cubes.slice(0, MOST_BOXES).map((cube) => cube.invert())
}

const unit = new Box3(new Vector3(-0.5, -0.5, -0.5), new Vector3(0.5, 0.5, 0.5))

/** Those that may reach into what `bounds` holds: a room need not ask the others, and does not change with them. */
export const boxesNear = (boxes: readonly Matrix4[], bounds: Box3): Matrix4[] =>
  boxes.filter((into) => bounds.clone().applyMatrix4(into).intersectsBox(unit))

function cubesOf(o: Obstacle, at: Vec3 | undefined): Matrix4[] {
  const margin = o.margin ?? 0
  switch (o.kind) {
    case 'box':
      return [boxCube(o, at ?? o.center, margin)]
    case 'lane':
      return laneCubes(o, margin)
    case 'ground':
    case 'water':
      return [below(o.elevation + margin)]
    // Bars come last, see above; no cube holds a model: its depth is told beside it.
    case 'cross-frame':
    case 'mesh':
      return []
  }
}

/** With `margin` on top of it, m. */
export function boxCube({ size, turn = 0 }: BoxObstacle, at: Vec3, margin: number): Matrix4 {
  const [x, y, z] = at
  return new Matrix4()
    .makeTranslation(x, y, z + margin / 2)
    .multiply(new Matrix4().makeRotationZ((turn * Math.PI) / 180))
    .scale(new Vector3(size[0], size[1], size[2] + margin))
}

const below = (top: number): Matrix4 =>
  new Matrix4().makeTranslation(0, 0, top - WIDE / 2).scale(new Vector3(2 * WIDE, 2 * WIDE, WIDE))

/** One sheared cube for each piece of the path. */
function laneCubes({ path, width, clearHeight }: LaneObstacle, margin: number): Matrix4[] {
  const height = clearHeight + margin
  return path.slice(1).map((b, i) => {
    const a = path[i]!
    const run: Vec3 = [b[0] - a[0], b[1] - a[1], b[2] - a[2]]
    const flat = Math.hypot(run[0], run[1]) || 1
    const [lx, ly] = [(-run[1] / flat) * width, (run[0] / flat) * width]
    const [x, y, z] = [0, 1, 2].map((k) => (a[k]! + b[k]!) / 2 + (k === 2 ? height / 2 : 0)) as Vec3
    return new Matrix4().set(run[0], lx, 0, x, run[1], ly, 0, y, run[2], 0, height, z, 0, 0, 0, 1)
  })
}

/** The bars of a cross-frame, none of another kind or where a girder is missing. */
function barCubes(plan: Plan, o: Obstacle): Matrix4[] {
  const bars = o.kind === 'cross-frame' ? crossFrameBars(plan, o) : null
  return (bars ?? []).flatMap((bar) => barCube(bar, o.margin ?? 0))
}

/** Sheared: along the bar, level across it, plumb as high as the bar is and its margin. */
export function barCube({ from, to, size }: Bar, margin: number): Matrix4[] {
  const run: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
  const flat = Math.hypot(run[0], run[1])
  if (flat === 0) return []
  const [lx, ly] = [(-run[1] / flat) * size, (run[0] / flat) * size]
  const high = (size * Math.hypot(...run)) / flat + margin
  const [x, y, z] = [0, 1, 2].map((k) => (from[k]! + to[k]!) / 2 + (k === 2 ? margin / 2 : 0)) as Vec3
  return [new Matrix4().set(run[0], lx, 0, x, run[1], ly, 0, y, run[2], 0, high, z, 0, 0, 0, 1)]
}

/** Top flange, web and bottom flange. */
export function girderCubes(girder: Girder): Matrix4[] {
  const { section: s, start, end } = girder
  const length = Math.hypot(end[0] - start[0], end[1] - start[1], end[2] - start[2])
  const over = s.depth - s.bottomThickness
  const cube = (wide: number, from: number, to: number): Matrix4 =>
    girderMatrix(girder)
      .multiply(new Matrix4().makeTranslation(length / 2, 0, -(from + to) / 2))
      .scale(new Vector3(length, wide, to - from))
  return [
    cube(s.topWidth, 0, s.topThickness),
    cube(s.webThickness, s.topThickness, over),
    cube(s.bottomWidth, over, s.depth),
  ]
}
