/**
 * The side panels of views that have one of their own; they load when first shown. Site and Rig show the findings. A new
 * view needs its folder here and its name in src/state/views.ts.
 */
import { type ComponentType, type LazyExoticComponent, lazy } from 'react'
import type { View } from '../state/window-state'

type Panel = LazyExoticComponent<ComponentType>

const panels: Partial<Record<View, Panel>> = {
  clashes: lazy(() => import('./clashes/ClashesPanel')),
  fall: lazy(() => import('./fall/FallPanel')),
  teach: lazy(() => import('./teach/TeachPanel')),
  handover: lazy(() => import('./handover/HandoverPanel')),
}

export const viewPanel = (view: View): Panel | undefined => panels[view]

/** What a view puts over the picture of the site, and under it. */
const covers: Partial<Record<View, Panel>> = { teach: lazy(() => import('./teach/TeachStage')) }
const unders: Partial<Record<View, Panel>> = { fall: lazy(() => import('./fall/FallStage')) }

export const viewCover = (view: View): Panel | undefined => covers[view]
export const viewUnder = (view: View): Panel | undefined => unders[view]
