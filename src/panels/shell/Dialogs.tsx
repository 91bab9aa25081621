/** The windows in front of the window, each loaded when it is first opened. */
import { type ComponentType, type JSX, type LazyExoticComponent, lazy, Suspense } from 'react'
import { useApp } from '../../state/store'
import type { Dialog } from '../../state/window-state'

const dialogs: Record<Dialog['kind'], LazyExoticComponent<ComponentType>> = {
  parts: lazy(() => import('../parts/PartsDialog')),
  part: lazy(() => import('../parts/PartDialog')),
  'copy-line': lazy(() => import('../rig/CopyLineDialog')),
  'copy-girder': lazy(() => import('../site/CopyGirderDialog')),
  'girder-table': lazy(() => import('../site/GirderTableDialog')),
  'loop-table': lazy(() => import('../site/LoopTableDialog')),
  'deck-table': lazy(() => import('../site/DeckTableDialog')),
  'lane-table': lazy(() => import('../site/LaneTableDialog')),
  rescue: lazy(() => import('../handover/RescueDialog')),
  model: lazy(() => import('../models/ModelDialog')),
  basis: lazy(() => import('../rig/BasisDialog')),
  shortcuts: lazy(() => import('../help/ShortcutsDialog')),
  find: lazy(() => import('../find/FindDialog')),
  about: lazy(() => import('../help/AboutDialog')),
}

export function Dialogs(): JSX.Element | null {
  const kind = useApp((s) => s.dialog?.kind)
  const Shown = kind ? dialogs[kind] : null
  return Shown ? (
    <Suspense fallback={null}>
      <Shown />
    </Suspense>
  ) : null
}
