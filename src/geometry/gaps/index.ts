export { type ModelData, meshTarget, modelIndex, type ReadModel } from './mesh'
export { gapsOfLine, gapsOfPlan, type LineGaps, mergeGaps } from './plan-gaps'
export { type MeshTarget, type Target, targetsOf } from './target'
export type * from './types'
