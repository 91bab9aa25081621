/** Segments as flat ribbons that turn towards the eye: two triangles each, all of them one drawing. */
import { BufferAttribute, BufferGeometry } from 'three'

/** Corners of one segment: two at each end, one to either side. */
const CORNERS = 4

/**
 * Room for `count` segments, see `setSegments`. A corner knows its own end (`position`), the `other` end of its segment,
 * the `side` it lies on as seen from its own end towards the other, and how far `along` the line both are, m.
 */
export function ribbonGeometry(count: number): BufferGeometry {
  const geometry = new BufferGeometry()
  const corners = count * CORNERS
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(corners * 3), 3))
  geometry.setAttribute('other', new BufferAttribute(new Float32Array(corners * 3), 3))
  geometry.setAttribute('along', new BufferAttribute(new Float32Array(corners * 2), 2))
  geometry.setAttribute('side', new BufferAttribute(sides(count), 1))
  geometry.setIndex(new BufferAttribute(triangles(count), 1))
  return geometry
}

/** Left and right of the first end, then of the second: looking back, its left is what the first calls right. */
function sides(count: number): Float32Array {
  const array = new Float32Array(count * CORNERS)
  for (let i = 0; i < count; i++) array.set([1, -1, -1, 1], i * CORNERS)
  return array
}

function triangles(count: number): Uint16Array | Uint32Array {
  const Indices = count * CORNERS > 0xffff ? Uint32Array : Uint16Array
  const array = new Indices(count * 6)
  for (let i = 0; i < count; i++) {
    const c = i * CORNERS
    array.set([c, c + 1, c + 2, c + 2, c + 1, c + 3], i * 6)
  }
  return array
}

/**
 * Writes segments over those that are there.
 * @param points pairs of points, flat: x, y, z of one end, then of the other; as many as the geometry has room for.
 */
export function setSegments(geometry: BufferGeometry, points: ArrayLike<number>): void {
  const own = geometry.getAttribute('position') as BufferAttribute
  const other = geometry.getAttribute('other') as BufferAttribute
  const along = geometry.getAttribute('along') as BufferAttribute
  let so = 0
  for (let i = 0; i * 6 < points.length; i++) {
    const end = so + lengthOf(points, i * 6)
    for (let c = 0; c < CORNERS; c++) {
      const [here, there] = c < 2 ? [i * 6, i * 6 + 3] : [i * 6 + 3, i * 6]
      own.setXYZ(i * CORNERS + c, points[here]!, points[here + 1]!, points[here + 2]!)
      other.setXYZ(i * CORNERS + c, points[there]!, points[there + 1]!, points[there + 2]!)
      along.setXY(i * CORNERS + c, c < 2 ? so : end, c < 2 ? end : so)
    }
    so = end
  }
  for (const attribute of [own, other, along]) attribute.needsUpdate = true
  geometry.boundingSphere = geometry.boundingBox = null
}

const lengthOf = (p: ArrayLike<number>, at: number): number =>
  Math.hypot(p[at + 3]! - p[at]!, p[at + 4]! - p[at + 1]!, p[at + 5]! - p[at + 2]!)
