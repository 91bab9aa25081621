/**
 * How each thing of a scene looks and where it stands, as one number for each: where the number is the same, drawing it
 * again draws the same. What only the camera's move brings about is not in it.
 */
import type { BufferGeometry, InstancedMesh, Material, Mesh, Object3D, Scene } from 'three'

export type Looks = ReadonlyMap<Object3D, number>

const isDrawn = (o: Object3D): boolean =>
  (o as Mesh).isMesh || 'isLine' in o || 'isPoints' in o || 'isSprite' in o

/** Of everything that is drawn, visible by itself and by all that it is part of. */
export function looksOf(scene: Scene): Looks {
  const looks = new Map<Object3D, number>()
  scene.traverseVisible((o) => {
    if (isDrawn(o)) looks.set(o, lookOf(o as Mesh))
  })
  return looks
}

/** Of what all of them share: light, ground colour, camera and size. */
export function viewLook(scene: Scene, camera: Object3D, size: readonly number[]): number {
  const sum = start()
  sum.add(...size, scene.background)
  sum.add(camera.matrixWorld, (camera as unknown as { projectionMatrix: unknown }).projectionMatrix)
  scene.traverseVisible((o) => {
    if (!('isLight' in o)) return
    const { color, groundColor, intensity } = o as unknown as Record<string, unknown>
    sum.add(color, groundColor, intensity, o.matrixWorld)
  })
  return sum.value()
}

function lookOf(mesh: Mesh): number {
  const sum = start()
  sum.add(mesh.matrixWorld, mesh.renderOrder)
  addGeometry(sum, mesh.geometry)
  const { count, instanceMatrix, instanceColor } = mesh as Partial<InstancedMesh>
  sum.add(count, instanceMatrix?.version, instanceColor?.version)
  for (const material of [mesh.material].flat()) addMaterial(sum, material)
  return sum.value()
}

function addGeometry(sum: Sum, geometry: BufferGeometry): void {
  sum.add(geometry.id, geometry.drawRange.start, geometry.drawRange.count)
  sum.add((geometry as { instanceCount?: number }).instanceCount, geometry.index?.version)
  for (const attribute of Object.values(geometry.attributes)) {
    const { version, data } = attribute as { version?: number; data?: { version: number } }
    sum.add(version ?? data?.version)
  }
}

interface Styled {
  color?: unknown
  map?: unknown
  uniforms?: Record<string, { value: unknown }>
}

function addMaterial(sum: Sum, material: Material): void {
  const { color, map, uniforms } = material as Material & Styled
  sum.add(material.id, material.version, material.opacity, material.side, color, map)
  sum.add(material.transparent, material.depthTest, material.depthWrite)
  if (uniforms) for (const { value } of Object.values(uniforms)) sum.add(value)
}

interface Sum {
  add(...values: unknown[]): void
  value(): number
}

const real = new Float64Array(1)
const bits = new Uint32Array(real.buffer)

/** Fowler's, Noll's and Vo's hash over the bits of numbers, and of what is made of numbers. */
function start(): Sum {
  let hash = 0x811c9dc5
  const addNumber = (v: number): void => {
    real[0] = v
    hash = Math.imul(hash ^ bits[0]!, 0x01000193)
    hash = Math.imul(hash ^ bits[1]!, 0x01000193)
  }
  const add = (...values: unknown[]): void => {
    for (const v of values) {
      if (typeof v === 'number') addNumber(v)
      else if (typeof v === 'boolean') addNumber(v ? 1 : 2)
      else if (Array.isArray(v) || ArrayBuffer.isView(v)) for (const part of v as number[]) add(part)
      else for (const part of partsOf(v)) addNumber(part)
    }
  }
  return { add, value: () => hash >>> 0 }
}

/** Numbers of a colour, vector, matrix or texture; anything else looks the same whatever it is. */
function partsOf(v: unknown): readonly number[] {
  if (v === null || typeof v !== 'object') return [0]
  const { elements, toArray, isTexture, id, version } = v as Record<string, unknown>
  if (isTexture) return [id as number, version as number]
  if (elements) return elements as number[]
  return typeof toArray === 'function' ? (toArray.call(v) as number[]) : [0]
}
