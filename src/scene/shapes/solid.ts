/** Small helpers from flat lists of coordinates to three's geometry. */
import { BufferAttribute, BufferGeometry, EdgesGeometry } from 'three'
import type { Vec3 } from '../../plan/types'

/** Flat-faced geometry of triangles given as coordinates, three corners each. */
export function facets(points: readonly number[] | Float32Array): BufferGeometry {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(points), 3))
  geometry.computeVertexNormals()
  return geometry
}

/** Edges of a geometry sharper than `degrees`, as pairs of points. */
export function sharpEdges(geometry: BufferGeometry, degrees = 25): number[] {
  const edges = new EdgesGeometry(geometry, degrees)
  const points = [...(edges.getAttribute('position').array as Float32Array)]
  edges.dispose()
  return points
}

/** A polyline as pairs of points. */
export const chain = (points: readonly Vec3[]): number[] =>
  points.slice(1).flatMap((p, i) => [...points[i]!, ...p])
