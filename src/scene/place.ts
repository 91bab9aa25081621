/** From a girder's own coordinates (station, offset, height) to the plan's, as a matrix for a group of objects. */
import { Matrix4, Vector3 } from 'three'
import { girderFrame, topPoint } from '../geometry/girder'
import { radians } from '../geometry/vec'
import type { Girder, MeshObstacle, Vec3 } from '../plan/types'

/** Stations run along the slope, heights are plumb: a shear, as posts and ends stand plumb on a sloping girder. */
export function girderMatrix(girder: Girder): Matrix4 {
  const { along, left, origin } = girderFrame(girder)
  const [x, y, z] = origin
  return new Matrix4().set(along[0], left[0], 0, x, along[1], left[1], 0, y, along[2], 0, 1, z, 0, 0, 0, 1)
}

/** A point over a girder's top, m. */
export function overGirder(girder: Girder, station: number, offset: number, height: number): Vec3 {
  const [x, y, z] = topPoint(girderFrame(girder), station, offset)
  return [x, y, z + height]
}

/** From a model file's coordinates to the plan's: up axis, scale, turn about z, place. */
export function meshMatrix({ at = [0, 0, 0], turn = 0, scale = 1, upAxis = 'z' }: MeshObstacle): Matrix4 {
  const place = new Matrix4().makeTranslation(...at).multiply(new Matrix4().makeRotationZ(radians(turn)))
  if (upAxis === 'y') place.multiply(new Matrix4().makeRotationX(Math.PI / 2))
  return place.scale(new Vector3(scale, scale, scale))
}
