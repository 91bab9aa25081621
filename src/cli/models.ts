/** Reads the models that a plan names, for the headless verbs. */
import type { Plan } from '../plan/types'
import type { Models } from '../study/obstacles'

/** The models of a plan that lies at `planFile`; what cannot be read says why, and its gap is then not known. */
export async function readModels(plan: Plan, _planFile: string): Promise<Models> {
  const models: Models = new Map()
  for (const o of plan.obstacles) {
    if (o.kind === 'mesh') models.set(o.id, { ok: false, why: `the model ${o.file} has not been read` })
  }
  return models
}
