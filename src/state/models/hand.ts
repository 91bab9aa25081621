/** Hands the models that the plan places to a worker: each is copied once only. */
import type { ReadModel } from '../../geometry/gaps'
import { modelsForStudy } from './model-store'

interface Keeper {
  keepModel(file: string, read: ReadModel | null): Promise<void>
}

/** `has` are the models that this worker has; it is brought up to date, and so is the worker. */
export async function handModels(api: Keeper, has: Map<string, ReadModel>): Promise<void> {
  const wanted = modelsForStudy()
  for (const file of [...has.keys()]) {
    if (wanted.has(file)) continue
    has.delete(file)
    await api.keepModel(file, null)
  }
  for (const [file, read] of wanted) {
    if (has.get(file) === read) continue
    has.set(file, read)
    await api.keepModel(file, read)
  }
}
