import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readModels } from '../../../src/cli/models'
import { readModel } from '../../../src/models/read'
import type { MeshObstacle, Plan } from '../../../src/plan/types'
import type { Results } from '../../../src/study/results'
import { study } from '../../../src/study/study'
import { samplePlan } from '../handover/made'
import { boxTriangles, bytesOf, glb, obj, stl } from './make'

const box = boxTriangles([14, -1, 1], [17, 1, 3])
const withNaN = (bytes: Uint8Array): Uint8Array =>
  bytesOf(new TextDecoder().decode(bytes).replace(/^v \S+/m, 'v NaN'))

let folder = ''
let results: Results
let plan: Plan

const meshes: MeshObstacle[] = [
  ['short', 'short.glb'],
  ['nan', 'nan.obj'],
  ['none', 'none.stl'],
  ['outside', '../outside.stl'],
  ['lost', 'lost.ply'],
  ['changed', 'whole.stl'],
  ['whole', 'whole.stl'],
].map(([id, file]) => ({ id: id!, name: id!, kind: 'mesh', file: file! }))

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'models-'))
  const files: [string, Uint8Array][] = [
    ['short.glb', (await glb(box)).slice(0, 300)],
    ['nan.obj', withNaN(obj(box))],
    ['none.stl', stl([])],
    ['whole.stl', stl(box)],
  ]
  for (const [name, bytes] of files) await writeFile(join(folder, name), bytes)
  const sample = samplePlan()
  const placed = meshes.map((m) => (m.id === 'changed' ? { ...m, fileHash: 'a'.repeat(64) } : m))
  plan = { ...sample, obstacles: [...sample.obstacles, ...placed] }
  const models = await readModels(plan, join(folder, 'plan.json'))
  results = study(plan, { withoutTime: true, wholeRooms: true, models }).results
})
afterAll(() => rm(folder, { recursive: true }))

const gapOf = (id: string) => results.obstacles.find((o) => o.id === id)!
const finding = (id: string) => results.findings.find((f) => f.rule === 'obstacle-gap' && f.subject === id)!

describe('a model that is no good is told, and the rest of the plan goes on', () => {
  it.each([
    ['short', 'cut short'],
    ['nan', 'no number'],
    ['none', 'no triangles'],
    ['outside', 'was not read'],
    ['lost', 'not there'],
    ['changed', 'not the one that was placed'],
  ])('%s: its gap is not known, because it is %s', (id, why) => {
    expect(gapOf(id)).toMatchObject({ gap: null, nearest: null, horizontal: null })
    expect(gapOf(id).unknown).toContain(why)
    expect(finding(id)).toMatchObject({ status: 'unknown', value: null })
    expect(finding(id).text).toContain(why)
  })

  it('beside them whole models and plain obstacles have their gaps', () => {
    expect(gapOf('whole').gap).toBeGreaterThan(0)
    expect(gapOf('whole').nearest).toBeGreaterThan(0)
    for (const o of samplePlan().obstacles) expect(typeof gapOf(o.id).gap).toBe('number')
    expect(results.lines.every((l) => l.governing.tension !== null)).toBe(true)
  })

  it('an open or inverted surface is measured as it stands, and said to be so', async () => {
    const open = await readModel('open.stl', stl(box.slice(0, 7)))
    const inside = await readModel('inside.stl', stl(box.map(([a, b, c]) => [a!, c!, b!])))
    if (!open.ok || !inside.ok) throw new Error('both can be read')
    expect(open.value.notes.join()).toContain('open')
    expect(inside.value.notes.join()).toMatch(/inside|inward/)
  })

  it.each([
    ['face.obj', 'v 0 0 0\nv 0 1 0\nv 1 1 0\nf 1 2 9\n', /names a corner that is not there/],
    [
      'slip.ifc',
      'ISO-10303-21;\nHEADER;\nENDSEC;\nDATA;\n#1=IFCBEAM(;\nENDSEC;\nEND-ISO-10303-21;\n',
      /^slip\.ifc: the IFC file is damaged: it cannot be read to its end$/,
    ],
  ])('%s is refused in words about the file, not about the program', async (name, text, why) => {
    const read = await readModel(name, bytesOf(text))
    expect(read.ok ? '' : read.why).toMatch(why)
  })

  it('an IFC file of 300 MB is refused in words, before anything is made of it', async () => {
    const bytes = new Uint8Array(300 * 1024 * 1024)
    bytes.set(bytesOf('ISO-10303-21;\n'))
    const read = await readModel('large.ifc', bytes)
    expect(read.ok ? '' : read.why).toContain('more than the 256 MB')
  })
})
