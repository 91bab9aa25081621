import { mkdir, realpath } from 'node:fs/promises'
import { basename, dirname, extname, join, sep } from 'node:path'
import { MAX_MESH_BYTES, type PickedFile, refused, type Said, said } from '../../src/desk/bridge'
import { relativeParts } from '../../src/desk/mesh-path'
import { fileFault } from './fault'
import { readRegular } from './read-file'
import { writeAtomic } from './write-atomic'

/** What a model may be made of: itself, and the buffers, materials and pictures that some formats keep beside them. */
const modelEndings = /\.(glb|gltf|bin|obj|mtl|stl|ply|ifc|png|jpe?g|webp|ktx2)$/i

/**
 * Reads a model by its path relative to the plan's folder. Refuses every path that leads out of that folder, by its
 * spelling or through a link, and every file that is no model.
 */
export async function readModel(planPath: string, file: string): Promise<Said<PickedFile>> {
  const inside = await pathInside(dirname(planPath), file)
  if (!inside.ok) return inside
  const bytes = await readRegular(inside.value, MAX_MESH_BYTES)
  return bytes.ok ? said({ name: file, bytes: bytes.value }) : bytes
}

async function pathInside(folder: string, file: string): Promise<Said<string>> {
  const parts = relativeParts(file)
  if (!parts)
    return refused('outside', `The model "${shown(file)}" does not lie beside the plan, so it is not read.`)
  if (!modelEndings.test(file))
    return refused('outside', `"${shown(file)}" is no model file that can be read.`)
  try {
    const root = await realpath(folder)
    const path = await realpath(join(root, ...parts))
    if (path.startsWith(root.endsWith(sep) ? root : root + sep)) return said(path)
    return refused('outside', `The model "${shown(file)}" leads out of the plan's folder, so it is not read.`)
  } catch (error) {
    return fileFault(error, `The model "${shown(file)}"`)
  }
}

/** Puts a model beside the plan. A different file of that name stays; the new one gets a number. Value: its name. */
export async function keepModel(planPath: string, file: PickedFile): Promise<Said<string>> {
  const parts = relativeParts(file.name)
  if (parts?.length !== 1 || !modelEndings.test(file.name)) {
    return refused('bad-request', `"${shown(file.name)}" is no name for a model file.`)
  }
  for (let number = 1; number < 1000; number += 1) {
    const name = number === 1 ? file.name : numbered(file.name, number)
    const put = await putNew(join(dirname(planPath), name), file.bytes)
    if (put !== 'different') return put === 'put' ? said(name) : put
  }
  return refused('failed', `There are too many files named like "${shown(file.name)}" beside the plan.`)
}

type Put = 'put' | 'different' | Extract<Said<never>, { ok: false }>

/** Never goes over a file that is there; one with the same bytes counts as put. */
async function putNew(path: string, bytes: Uint8Array): Promise<Put> {
  const there = await readRegular(path, MAX_MESH_BYTES)
  if (there.ok) return there.value.equals(bytes) ? 'put' : 'different'
  if (there.code !== 'missing') return 'different'
  try {
    await writeAtomic(path, bytes)
    return 'put'
  } catch (error) {
    return fileFault(error, basename(path))
  }
}

function numbered(name: string, number: number): string {
  const end = extname(name)
  return `${basename(name, end)}-${number}${end}`
}

/** A name out of a plan may be anything; at most this much of it is shown. */
function shown(name: string): string {
  return name.length > 80 ? `${name.slice(0, 80)}...` : name
}

/** Copies the models that a plan names when the plan is saved into another folder. What is already there stays. */
export async function copyModels(text: string, fromPlan: string, toPlan: string): Promise<void> {
  if (dirname(fromPlan) === dirname(toPlan)) return
  for (const file of modelsIn(text)) {
    const model = await readModel(fromPlan, file)
    if (!model.ok) continue
    const path = join(dirname(toPlan), ...(relativeParts(file) ?? []))
    await mkdir(dirname(path), { recursive: true }).catch(() => {})
    await putNew(path, model.value.bytes)
  }
}

function modelsIn(text: string): string[] {
  try {
    const obstacles: unknown = JSON.parse(text)?.obstacles
    if (!Array.isArray(obstacles)) return []
    return obstacles
      .filter((one) => one?.kind === 'mesh' && typeof one.file === 'string')
      .map((one) => one.file)
  } catch {
    return []
  }
}
