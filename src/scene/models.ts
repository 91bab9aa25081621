/** Triangles of the model files that a plan names, as read: the scene only places them. */
import { create } from 'zustand'

export interface SceneModel {
  /** Three corners of three coordinates for each triangle, in the file's own units and axes. */
  triangles: Float32Array
}

export const sceneModels = create<{ byFile: ReadonlyMap<string, SceneModel> }>()(() => ({
  byFile: new Map(),
}))

/** Shows a model wherever the plan names its file; null takes it away again. */
export function showModel(file: string, triangles: Float32Array | null): void {
  const byFile = new Map(sceneModels.getState().byFile)
  if (triangles) byFile.set(file, { triangles })
  else byFile.delete(file)
  sceneModels.setState({ byFile })
}
