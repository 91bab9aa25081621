/**
 * Many copies of one body as a single plain geometry. Without a graphics processor every instance costs as much as a draw
 * of its own (26 us, and a large site has 8,000 segments, loops and posts), the corners of a plain geometry next to nothing.
 */
import {
  BufferAttribute,
  BufferGeometry,
  type Color,
  type InstancedBufferGeometry,
  Matrix3,
  type Matrix4,
  type TypedArray,
} from 'three'

/** The same picture as of instances: attributes of an instance are written out for each of its corners. */
export function mergeInstances(from: InstancedBufferGeometry): BufferGeometry {
  const corners = from.getAttribute('position').count
  const merged = new BufferGeometry()
  for (const [name, attribute] of Object.entries(from.attributes)) {
    const { itemSize } = attribute
    const own = isInstanced(attribute)
    const values = new Float32Array(from.instanceCount * corners * itemSize)
    let at = 0
    for (let i = 0; i < from.instanceCount; i++)
      for (let c = 0; c < corners; c++)
        for (let k = 0; k < itemSize; k++) values[at++] = attribute.getComponent(own ? i : c, k)
    merged.setAttribute(name, new BufferAttribute(values, itemSize))
  }
  merged.setIndex(indexOf(from, corners, from.instanceCount))
  merged.boundingBox = from.boundingBox
  merged.boundingSphere = from.boundingSphere
  return merged
}

function isInstanced(attribute: object): boolean {
  const { isInstancedBufferAttribute, data } = attribute as {
    isInstancedBufferAttribute?: boolean
    data?: { isInstancedInterleavedBuffer?: boolean }
  }
  return isInstancedBufferAttribute === true || data?.isInstancedInterleavedBuffer === true
}

/** The copies of a body that the matrices place, with their normals. */
export function mergeCopies(body: BufferGeometry, places: readonly Matrix4[]): BufferGeometry {
  const [positions, normals] = [corneredBy(body, 'position'), corneredBy(body, 'normal')]
  const corners = positions.count
  const merged = new BufferGeometry()
  const put = (name: string, copyOf: (place: Matrix4) => TypedArray): void => {
    const values = new Float32Array(places.length * corners * 3)
    for (const [i, place] of places.entries()) values.set(copyOf(place), i * corners * 3)
    merged.setAttribute(name, new BufferAttribute(values, 3))
  }
  const turn = new Matrix3()
  put('position', (place) => positions.clone().applyMatrix4(place).array)
  put('normal', (place) => normals.clone().applyNormalMatrix(turn.getNormalMatrix(place)).array)
  merged.setIndex(indexOf(body, corners, places.length))
  merged.computeBoundingSphere()
  return merged
}

const corneredBy = (body: BufferGeometry, name: string): BufferAttribute =>
  body.getAttribute(name) as BufferAttribute

/** Gives each of the copies that were merged one colour, now or anew. */
export function colorCopies(merged: BufferGeometry, colors: readonly Color[]): void {
  const { count } = merged.getAttribute('position')
  if (!merged.hasAttribute('color')) {
    merged.setAttribute('color', new BufferAttribute(new Float32Array(count * 3), 3))
  }
  const attribute = merged.getAttribute('color') as BufferAttribute
  const corners = count / Math.max(1, colors.length)
  for (const [i, color] of colors.entries())
    for (let c = 0; c < corners; c++) color.toArray(attribute.array, (i * corners + c) * 3)
  attribute.needsUpdate = true
}

function indexOf(body: BufferGeometry, corners: number, copies: number): BufferAttribute {
  const own = body.index ? [...body.index.array] : Array.from({ length: corners }, (_, i) => i)
  const values = new Uint32Array(own.length * copies)
  for (let i = 0; i < copies; i++)
    for (const [k, corner] of own.entries()) values[i * own.length + k] = i * corners + corner
  return new BufferAttribute(values, 1)
}
