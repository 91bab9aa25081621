/** What every thing in the scene does under the pointer: tell that it is hovered, be selected. */
import type { ThreeEvent } from '@react-three/fiber'
import type { Intersection } from 'three'
import { hover, select } from '../state/actions'
import { hasRef, type Ref, sameRef } from '../state/refs'
import { app, useApp } from '../state/store'

/** A press that moved further than this was a drag of the camera, not a click, px. */
export const CLICK_SLACK = 4

export interface PickHandlers {
  onPointerOver: (e: ThreeEvent<PointerEvent>) => void
  onPointerOut: (e: ThreeEvent<PointerEvent>) => void
  onClick: (e: ThreeEvent<MouseEvent>) => void
  onContextMenu: (e: ThreeEvent<MouseEvent>) => void
}

const selecting = (): boolean => app.getState().tool.kind === 'select'

/** Handlers for the object that stands for `ref`; while something is drawn the scene is only looked at. */
export function picks(ref: Ref): PickHandlers {
  return {
    onPointerOver: (e) => {
      if (!selecting() || e.buttons > 0) return
      e.stopPropagation()
      hover(ref)
    },
    onPointerOut: () => {
      if (sameRef(app.getState().hover, ref)) hover(null)
    },
    onClick: (e) => {
      if (!selecting() || e.delta > CLICK_SLACK) return
      e.stopPropagation()
      select(ref, e.nativeEvent.shiftKey || e.nativeEvent.ctrlKey || e.nativeEvent.metaKey)
    },
    onContextMenu: (e) => {
      if (!selecting() || e.delta > CLICK_SLACK) return
      if (!hasRef(app.getState().selection, ref)) select(ref)
    },
  }
}

export type Mark = 'none' | 'hover' | 'selected'

/** How a thing is marked now; a row's finding under the pointer counts as hover. */
export const useMark = (ref: Ref): Mark =>
  useApp((s) => (hasRef(s.selection, ref) ? 'selected' : sameRef(s.hover, ref) ? 'hover' : 'none'))

export const useHidden = (id: string): boolean => useApp((s) => s.hidden.includes(id))

/** Marks an object as a grip: see `gripsFirst`. */
export const GRIP = { grip: true } as const

/** A grip is taken before a body that hides it by less than this, m. */
const THROUGH = 1

/** Grips before bodies: a foot just behind a girder's edge is what the hand wants, not the girder. */
export function gripsFirst(hits: Intersection[]): Intersection[] {
  const nearest = hits.find((h) => !h.object.userData.grip)?.distance ?? Number.POSITIVE_INFINITY
  const grip = (h: Intersection): boolean => h.object.userData.grip === true && h.distance < nearest + THROUGH
  return [...hits.filter(grip), ...hits.filter((h) => !grip(h))]
}
