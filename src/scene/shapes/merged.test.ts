import {
  BoxGeometry,
  BufferAttribute,
  type BufferGeometry,
  Color,
  InstancedBufferAttribute,
  InstancedBufferGeometry,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
  Raycaster,
  Vector3,
} from 'three'
import { expect, it } from 'vitest'
import { colorCopies, mergeCopies, mergeInstances } from './merged'

const SEED = 20261125

/** Numbers from 0 to 1, the same for a seed on every machine (Park and Miller 1988). */
function numbers(seed: number): () => number {
  let state = seed % 2147483647
  return () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
}

const place = (next: () => number): Matrix4 =>
  new Matrix4()
    .makeTranslation(20 * next(), 20 * next(), 20 * next())
    .multiply(new Matrix4().makeRotationZ(6 * next()))
    .scale(new Vector3(0.5 + next(), 0.5 + next(), 0.5 + next()))

const hits = (mesh: Mesh, from: Vector3, way: Vector3) =>
  new Raycaster(from, way).intersectObject(mesh).map((h) => ({ distance: h.distance, normal: h.normal! }))

it(`is struck by rays where the copies themselves are, with their normals (seed ${SEED})`, () => {
  const next = numbers(SEED)
  const body = new BoxGeometry()
  const material = new MeshBasicMaterial()
  const places = Array.from({ length: 12 }, () => place(next))
  const merged = new Mesh(mergeCopies(body, places), material)
  const apart = places.map((matrix) => {
    const mesh = new Mesh(body, material)
    mesh.matrixAutoUpdate = false
    mesh.matrix.copy(matrix)
    mesh.updateMatrixWorld(true)
    return mesh
  })
  let struck = 0
  for (const [i, matrix] of places.entries()) {
    const to = new Vector3().setFromMatrixPosition(matrix)
    const from = new Vector3(30 * next(), 30 * next(), 40)
    const way = to.sub(from).normalize()
    const oracle = apart.flatMap((mesh) => hits(mesh, from, way)).sort((a, b) => a.distance - b.distance)
    const got = hits(merged, from, way)
    expect(got.length, `ray ${i}`).toBe(oracle.length)
    for (const [k, hit] of got.entries()) expect(hit.distance).toBeCloseTo(oracle[k]!.distance, 4)
    struck += got.length
  }
  expect(struck).toBeGreaterThanOrEqual(places.length)
})

it('turns normals as surfaces that are stretched turn', () => {
  const stretched = new Matrix4().makeRotationZ(0.4).scale(new Vector3(3, 1, 0.2))
  const merged = mergeCopies(new BoxGeometry(), [stretched])
  const faces = merged.toNonIndexed()
  const flat = faces.clone()
  flat.computeVertexNormals()
  const [told, seen] = [faces, flat].map((g) => [...g.getAttribute('normal').array])
  for (const [i, v] of told!.entries()) expect(v).toBeCloseTo(seen![i]!, 5)
})

it('writes out what each instance has for each of its corners', () => {
  const plane = new InstancedBufferGeometry()
  plane.setAttribute('position', new BufferAttribute(new Float32Array([0, 0, 0, 1, 0, 0, 0, 1, 0]), 3))
  plane.setIndex([0, 1, 2])
  plane.setAttribute('cell', new InstancedBufferAttribute(new Float32Array([5, 6, 7, 8]), 2))
  plane.instanceCount = 2
  const merged = mergeInstances(plane)
  const values = (of: BufferGeometry, name: string): number[] => [...of.getAttribute(name).array]
  expect(values(merged, 'cell')).toEqual([5, 6, 5, 6, 5, 6, 7, 8, 7, 8, 7, 8])
  expect(values(merged, 'position')).toEqual([0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 1, 0])
  expect([...merged.index!.array]).toEqual([0, 1, 2, 3, 4, 5])
})

it('gives each copy its colour, and another later', () => {
  const body = new BoxGeometry()
  const merged = mergeCopies(body, [new Matrix4(), new Matrix4()])
  const corners = body.getAttribute('position').count
  const firsts = (): number[] => [0, corners].map((i) => merged.getAttribute('color').getX(i))
  colorCopies(merged, [new Color(1, 0, 0), new Color(0, 0, 0)])
  expect(firsts()).toEqual([1, 0])
  const { version } = merged.getAttribute('color') as BufferAttribute
  colorCopies(merged, [new Color(0, 0, 0), new Color(1, 0, 0)])
  expect(firsts()).toEqual([0, 1])
  expect((merged.getAttribute('color') as BufferAttribute).version).toBeGreaterThan(version)
})
