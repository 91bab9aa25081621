/**
 * Dragging something in the scene: from press to release the camera stands still, and the pointer's ray is handed over at
 * once: browsers tell of moves once a frame, before it is made, so that this very frame shows them. What is dragged keeps
 * its own history entry; Escape takes it back.
 */
import { type RootState, type ThreeEvent, useThree } from '@react-three/fiber'
import { type Ray, Raycaster, Vector2 } from 'three'
import { app } from '../../state/store'
import { CLICK_SLACK } from '../pick'

export interface Drag {
  /** Once the pointer has moved further than a click does. */
  begin: () => void
  move: (ray: Ray, e: PointerEvent) => void
  end: () => void
  /** Escape, or the pointer was taken away: back to how it was. */
  cancel: () => void
}

export type View = Pick<RootState, 'camera' | 'gl' | 'controls'>

/** The view as it is when it is asked for: controls and camera may be exchanged meanwhile. */
export const useView = (): (() => View) => useThree((s) => s.get)

/** Starts on a press with the main button; below a few pixels it stays a click. */
export function startDrag(e: ThreeEvent<PointerEvent>, view: View, drag: Drag): void {
  if (e.nativeEvent.button !== 0 || app.getState().tool.kind !== 'select') return
  e.stopPropagation()
  const release = holdCamera(view)
  let moving = false
  const finish = (keep: boolean): void => {
    listening.abort()
    release()
    if (!moving) return
    if (keep) drag.end()
    else drag.cancel()
  }
  const onMove = (move: PointerEvent): void => {
    if (!moving && distance(move, e.nativeEvent) < CLICK_SLACK) return
    if (!moving) drag.begin()
    moving = true
    drag.move(rayAt(view, move), move)
  }
  const listening = listen(e.nativeEvent.pointerId, onMove, finish)
}

const distance = (a: MouseEvent, b: MouseEvent): number =>
  Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY)

function listen(id: number, onMove: (e: PointerEvent) => void, finish: (keep: boolean) => void) {
  const control = new AbortController()
  const until = { signal: control.signal }
  const mine = (act: (e: PointerEvent) => void) => (e: PointerEvent) => {
    if (e.pointerId === id) act(e)
  }
  window.addEventListener('pointermove', mine(onMove), until)
  window.addEventListener(
    'pointerup',
    mine(() => finish(true)),
    until,
  )
  window.addEventListener(
    'pointercancel',
    mine(() => finish(false)),
    until,
  )
  const onKey = (key: KeyboardEvent): void => {
    if (key.key !== 'Escape') return
    key.stopPropagation()
    finish(false)
  }
  window.addEventListener('keydown', onKey, { ...until, capture: true })
  return control
}

function holdCamera({ controls }: View): () => void {
  const orbit = controls as { enabled?: boolean } | null
  if (!orbit) return () => {}
  orbit.enabled = false
  return () => {
    orbit.enabled = true
  }
}

const caster = new Raycaster()

/** The ray under a pointer event. */
export function rayAt(
  { camera, gl }: Pick<View, 'camera' | 'gl'>,
  e: { clientX: number; clientY: number },
): Ray {
  const box = gl.domElement.getBoundingClientRect()
  const at = new Vector2(
    ((e.clientX - box.left) / box.width) * 2 - 1,
    1 - ((e.clientY - box.top) / box.height) * 2,
  )
  caster.setFromCamera(at, camera)
  return caster.ray.clone()
}
