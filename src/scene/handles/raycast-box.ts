/** Picks a large model by its box: testing a million triangles at every move of the pointer would stop the window. */
import { type Intersection, Matrix4, type Mesh, Ray, type Raycaster, Vector3 } from 'three'

const inverse = new Matrix4()
const local = new Ray()

export function raycastBox(this: Mesh, caster: Raycaster, hits: Intersection[]): void {
  const { geometry } = this
  if (!geometry.boundingBox) geometry.computeBoundingBox()
  local.copy(caster.ray).applyMatrix4(inverse.copy(this.matrixWorld).invert())
  const point = geometry.boundingBox && local.intersectBox(geometry.boundingBox, new Vector3())
  if (!point) return
  point.applyMatrix4(this.matrixWorld)
  const distance = caster.ray.origin.distanceTo(point)
  if (distance >= caster.near && distance <= caster.far) hits.push({ distance, point, object: this })
}
