/** Keeps the models in step with the plan: what it names is read from beside it, what it no longer names is let go. */
import { getDesk } from '../../desk/desk'
import type { Plan } from '../../plan/types'
import { app } from '../store'
import { modelStore, setModel } from './model-store'
import { readInWorker } from './reader'

/** Model files that the plan names, each once. */
const filesOf = (plan: Plan): string[] => [
  ...new Set(plan.obstacles.flatMap((o) => (o.kind === 'mesh' ? [o.file] : []))),
]

let of: string | null = null

function sync(plan: Plan, fileId: string | null): void {
  const wanted = filesOf(plan)
  const { byFile } = modelStore.getState()
  for (const file of byFile.keys()) if (fileId !== of || !wanted.includes(file)) setModel(file, null)
  of = fileId
  for (const file of wanted) if (!modelStore.getState().byFile.has(file)) void load(fileId, file)
}

async function load(fileId: string | null, file: string): Promise<void> {
  setModel(file, { state: 'reading', share: 0, what: 'opening' })
  const current = (): boolean => of === fileId && modelStore.getState().byFile.has(file)
  const got = await getDesk().readMesh(fileId, file)
  if (!current()) return
  if (!got.ok) {
    setModel(file, { state: 'failed', why: got.why, needsFolder: got.code === 'needs-folder' })
    return
  }
  const read = await readInWorker(file, got.value.bytes, (share, what) => {
    if (current()) setModel(file, { state: 'reading', share, what })
  })
  if (!current()) return
  setModel(
    file,
    read.ok ? { state: 'read', soup: read.value } : { state: 'failed', why: read.why, needsFolder: false },
  )
}

/** Reads a model once more, after its folder was chosen or its file put right. */
export function readAgain(file: string): void {
  void load(of, file)
}

/** From now on the plan's models are read. Returns what stops it. */
export function startModels(): () => void {
  const { plan, file } = app.getState()
  sync(plan, file.id)
  return app.subscribe((state, before) => {
    if (state.plan.obstacles !== before.plan.obstacles || state.file.id !== before.file.id) {
      sync(state.plan, state.file.id)
    }
  })
}
