/** Triangles of the model files that a plan names, as read: the scene only places them. */
import { type ModelEntry, modelStore } from '../state/models/model-store'

/** Told whenever a model has been read or let go. */
export const onModels = (listener: () => void): (() => void) => modelStore.subscribe(listener)

/** Three corners of three coordinates for each triangle, in the file's own units and axes; null: not read. */
export const useModel = (file: string): Float32Array | null =>
  modelStore((s) => trianglesOf(s.byFile.get(file)))

/** The same, now. */
export const readTriangles = (file: string): Float32Array | null =>
  trianglesOf(modelStore.getState().byFile.get(file))

const trianglesOf = (entry: ModelEntry | undefined): Float32Array | null =>
  entry?.state === 'read' ? entry.soup.triangles : null
