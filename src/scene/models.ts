/** Triangles of the model files that a plan names, as read: the scene only places them. */
import { modelStore } from '../state/models/model-store'

/** Told whenever a model has been read or let go. */
export const onModels = (listener: () => void): (() => void) => modelStore.subscribe(listener)

/** Three corners of three coordinates for each triangle, in the file's own units and axes; null: not read. */
export function useModel(file: string): Float32Array | null {
  return modelStore((s) => {
    const entry = s.byFile.get(file)
    return entry?.state === 'read' ? entry.soup.triangles : null
  })
}
