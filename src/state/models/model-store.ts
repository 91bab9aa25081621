/** The model files that the plan names, as far as they have been read in this window. */
import { create } from 'zustand'
import type { TriangleSoup } from '../../models/types'
import type { Models } from '../../study/obstacles'

export type ModelEntry =
  | { state: 'reading'; share: number; what: string }
  | { state: 'read'; soup: TriangleSoup }
  | { state: 'failed'; why: string; needsFolder: boolean }

export const modelStore = create<{ byFile: ReadonlyMap<string, ModelEntry> }>()(() => ({ byFile: new Map() }))

/** Puts one entry in place; null takes it away. */
export function setModel(file: string, entry: ModelEntry | null): void {
  const byFile = new Map(modelStore.getState().byFile)
  if (entry) byFile.set(file, entry)
  else byFile.delete(file)
  modelStore.setState({ byFile })
}

let last: { byFile: ReadonlyMap<string, ModelEntry>; models: Models } | null = null

/** What the study measures against; the same entries keep the same identity. */
export function modelsForStudy(): Models {
  const { byFile } = modelStore.getState()
  if (last?.byFile === byFile) return last.models
  const models: Models = new Map([...byFile].map(([file, entry]) => [file, readOf(file, entry)]))
  last = { byFile, models }
  return models
}

const known = new WeakMap<ModelEntry, ReturnType<typeof freshRead>>()

function readOf(file: string, entry: ModelEntry): ReturnType<typeof freshRead> {
  const kept = known.get(entry) ?? freshRead(file, entry)
  known.set(entry, kept)
  return kept
}

function freshRead(file: string, entry: ModelEntry) {
  if (entry.state === 'read') {
    return { ok: true as const, value: { triangles: entry.soup.triangles, hash: entry.soup.hash } }
  }
  const why = entry.state === 'reading' ? `the model ${file} is still being read` : entry.why
  return { ok: false as const, why }
}
