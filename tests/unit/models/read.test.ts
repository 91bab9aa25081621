import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readModel } from '../../../src/models/read'
import { boxTriangles, bytesOf, glb, obj, ply, stl, stlText } from './make'

const box = boxTriangles([1, 2, 3], [3, 5, 7])

async function read(name: string, bytes: Uint8Array) {
  const got = await readModel(name, bytes)
  if (!got.ok) throw new Error(got.why)
  return got.value
}

async function refusal(name: string, bytes: Uint8Array): Promise<string> {
  const got = await readModel(name, bytes)
  expect(got.ok).toBe(false)
  return got.ok ? '' : got.why
}

describe('models that are read', () => {
  it.each([
    ['box.obj', () => obj(box)],
    ['box.stl', () => stl(box)],
    ['text.stl', () => stlText(box)],
    ['box.ply', () => ply(box)],
  ])('%s gives its twelve triangles, closed, bounds and all', async (name, make) => {
    const model = await read(name, make())
    expect(model.triangles.length).toBe(12 * 9)
    expect(model.low).toEqual([1, 2, 3])
    expect(model.high).toEqual([3, 5, 7])
    expect(model.notes).toEqual([])
    expect(model.hash).toMatch(/^[0-9a-f]{64}$/)
    expect(model.metresPerUnit).toBeNull()
  })

  it('a GLB counts what its nodes move, is in metres and has y up', async () => {
    const model = await read('box.glb', await glb(box, [10, 0, 0]))
    expect(model.low).toEqual([11, 2, 3])
    expect(model).toMatchObject({ upAxis: 'y', metresPerUnit: 1, notes: [] })
  })

  it('tells the same file by the same hash, and another by another', async () => {
    const [a, b] = [await read('a.stl', stl(box)), await read('b.stl', stl(box))]
    const c = await read('c.stl', stl(boxTriangles([0, 0, 0], [1, 1, 1])))
    expect(a.hash).toBe(b.hash)
    expect(c.hash).not.toBe(a.hash)
  })
})

describe('models that are odd are read and told', () => {
  it('an open surface', async () => {
    expect((await read('open.stl', stl(box.slice(2)))).notes.join()).toContain('open (4 edges)')
  })
  it('a surface inside out', async () => {
    const out = box.map(([a, b, c]): (typeof box)[number] => [a, c, b])
    expect((await read('out.obj', obj(out))).notes.join()).toContain('inside out')
  })
  it('millimetres', async () => {
    expect((await read('mm.stl', stl(boxTriangles([0, 0, 0], [12000, 300, 900])))).notes.join()).toContain(
      'millimetres',
    )
  })
  it('coordinates too far away to be exact', async () => {
    const far = boxTriangles([500000, 4000000, 0], [500100, 4000100, 10])
    expect((await read('far.stl', stl(far))).notes.join()).toContain('kept to')
  })
})

describe('models that cannot be read say why', () => {
  it('cut short', async () => {
    expect(await refusal('a.glb', (await glb(box)).slice(0, 200))).toContain('cut short')
    expect(await refusal('a.glb', (await glb(box)).slice(0, 7))).toContain('cut short')
    expect(await refusal('a.stl', stl(box).slice(0, 300))).toContain('cut short')
    expect(await refusal('a.stl', stlText(box).slice(0, 700))).toContain('cut short')
    expect(await refusal('a.ply', ply(box).slice(0, 60))).toContain('cut short')
    expect(await refusal('a.gltf', bytesOf('{"asset": {'))).toContain('cut short or damaged')
    expect(await refusal('a.ifc', bytesOf('ISO-10303-21;\nHEADER;\n'))).toContain('cut short')
  })
  it('corners that are no numbers', async () => {
    const bad = obj(box)
    const text = new TextDecoder().decode(bad).replace('v 1 2 3', 'v 1 NaN 3')
    expect(await refusal('a.obj', bytesOf(text))).toMatch(/no number, at line 2/)
    const numbers = stl(box)
    new DataView(numbers.buffer).setFloat32(84 + 12, Number.NaN, true)
    expect(await refusal('a.stl', numbers)).toContain('no finite numbers')
  })
  it('no triangles', async () => {
    expect(await refusal('a.obj', bytesOf('v 0 0 0\nv 1 0 0\n'))).toContain('no triangles')
    expect(await refusal('a.glb', await glb([]))).toMatch(/no triangles|damaged/)
    expect(await refusal('a.stl', stl([]))).toContain('no triangles')
    expect(
      await refusal(
        'a.ply',
        bytesOf('ply\nformat ascii 1.0\nelement vertex 1\nproperty float x\nend_header\n0\n'),
      ),
    ).toContain('points')
  })
  it('something else altogether', async () => {
    expect(await refusal('a.exe', bytesOf('MZ'))).toContain('models are read from')
    expect(await refusal('a.ifc', bytesOf('hello'))).toContain('no IFC')
    expect(await refusal('a.glb', bytesOf('hello, this is no model at all'))).toContain('no GLB')
    expect(await refusal('a.stl', new Uint8Array(0))).toContain('empty')
    expect(
      await refusal(
        'a.glb',
        Uint8Array.from({ length: 400 }, (_, i) => (i * 73 + 41) % 256),
      ),
    ).toBeTruthy()
  })
  it('a glTF that points at another file', async () => {
    const json = { asset: { version: '2.0' }, buffers: [{ uri: '../secret.bin', byteLength: 4 }] }
    expect(await refusal('a.gltf', bytesOf(JSON.stringify(json)))).toContain('another file')
  })
})

/** Public models for trying the importer; the tests run without them too. */
const shared = '../shared/models'
describe.skipIf(!existsSync(`${shared}/beam-extruded-solid.ifc`))(
  'IFC models that lie beside the project',
  () => {
    it.each([
      'beam-extruded-solid',
      'beam-parametric-cross-section',
      'beam-straight-i-shape-tessellated',
      'beam-varying-profiles',
      'reinforcing-assembly',
    ])('%s has triangles of a plausible size', async (name) => {
      const model = await read(`${name}.ifc`, readFileSync(`${shared}/${name}.ifc`))
      const size = Math.max(...[0, 1, 2].map((k) => model.high[k]! - model.low[k]!))
      expect(model.triangles.length).toBeGreaterThan(9 * 11)
      expect(size).toBeGreaterThan(0.5)
      expect(size).toBeLessThan(100)
    })
  },
)
