/** Reads the models that a plan names, for the headless verbs. */
import { readFile, realpath, stat } from 'node:fs/promises'
import { dirname, join, relative, sep } from 'node:path'
import type { ReadModel } from '../geometry/gaps'
import { readModel } from '../models/read'
import { meshNameProblem } from '../plan/references/mesh-name'
import type { Plan } from '../plan/types'
import type { Models } from '../study/obstacles'

const MOST_BYTES = 512 * 1024 * 1024

/** The models of a plan that lies at `planFile`; what cannot be read says why, and its gap is then not known. */
export async function readModels(plan: Plan, planFile: string): Promise<Models> {
  const models = new Map<string, ReadModel>()
  for (const o of plan.obstacles) {
    if (o.kind === 'mesh' && !models.has(o.file)) models.set(o.file, await readBeside(planFile, o.file))
  }
  return models
}

async function readBeside(planFile: string, file: string): Promise<ReadModel> {
  const problem = meshNameProblem(file)
  if (problem) return { ok: false, why: `the model ${file} was not read: its name ${problem}` }
  try {
    const folder = await realpath(dirname(planFile))
    const place = await realpath(join(folder, file))
    const inside = relative(folder, place)
    // A link may lead out where the name does not.
    if (inside === '..' || inside.startsWith(`..${sep}`) || inside === '') {
      return { ok: false, why: `the model ${file} was not read: it leads out of the folder of the plan` }
    }
    const { size } = await stat(place)
    if (size > MOST_BYTES) {
      return { ok: false, why: `the model ${file} was not read: it is larger than 512 MB` }
    }
    return await readModel(file, await readFile(place))
  } catch (error) {
    const missing = (error as NodeJS.ErrnoException).code === 'ENOENT'
    const why = missing ? 'it is not there' : (error as Error).message
    return { ok: false, why: `the model ${file} was not read: ${why}` }
  }
}
