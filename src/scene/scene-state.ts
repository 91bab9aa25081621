/** What only the scene needs to know and remember: neither part of the plan nor of the window. */
import { create } from 'zustand'
import type { Ref } from '../state/refs'

export interface SceneState {
  /** What is being dragged in the scene, and why it does not follow the pointer; null where it does. */
  dragged: Ref | null
  held: string | null
  /** Which of its points is dragged: the end of a girder, the corner of a deck; null: the whole thing. */
  point: number | null
  /** No graphics processor draws: fewer faces, no smoothing while moving. Null: not known yet, nothing has been drawn. */
  software: boolean | null
  /** A fall in time is shown, so the resting picture of the governing fall steps aside. */
  playing: boolean
  /** The camera looks up from under the site: what lies below must not hide it. */
  under: boolean
}

export const sceneState = create<SceneState>()(() => ({
  dragged: null,
  held: null,
  point: null,
  software: null,
  playing: false,
  under: false,
}))

export const useSceneState = sceneState

/** Tells what is dragged, or which point of it, and what holds it back. */
export function tellDrag(dragged: Ref | null, held: string | null = null, point: number | null = null): void {
  const now = sceneState.getState()
  if (now.dragged !== dragged || now.held !== held || now.point !== point)
    sceneState.setState({ dragged, held, point })
}
