import { useMemo } from 'react'
import type { MeshBounds } from '../../drawings/obstacle-shapes'
import { meshBounds } from '../../handover/mesh-bounds'
import { modelStore, modelsForStudy } from '../../state/models/model-store'
import { useApp } from '../../state/store'

/** How far the models reach that have been read, for drawings in the window; the same until a model or the plan changes. */
export function useMeshBounds(): MeshBounds {
  const plan = useApp((s) => s.plan)
  const files = modelStore((s) => s.byFile)
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is studied is made from these files
  return useMemo(() => meshBounds(plan, modelsForStudy()), [plan, files])
}
