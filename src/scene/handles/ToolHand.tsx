/** While a drawing tool is in hand: tells it what the pointer meets, once a frame at most, and where it was clicked. */
import { type RootState, useThree } from '@react-three/fiber'
import { useEffect } from 'react'
import { look } from '../../state/actions'
import { app, useApp } from '../../state/store'
import { type Pick as Met, type PickKeys, toolClick, toolMove } from '../../state/tools/tools'
import { CLICK_SLACK } from '../pick'
import { rayAt, useView } from './drag'
import { metBy } from './met'

/** Looking flatter than this (the view's fall, 0 level to 1 plumb) points on the ground can't be told apart. */
const FLAT = 0.2

export function ToolHand() {
  const kind = useApp((s) => s.tool.kind)
  const view = useView()
  const scene = useThree((s) => s.scene)
  useEffect(() => {
    if (kind === 'select') return
    if (kind !== 'draw-line') seeFromAbove(view() as RootState)
    const element = view().gl.domElement
    element.style.cursor = 'crosshair'
    const stop = listen(element, (e, act) => {
      const met = metBy(rayAt(view(), e), scene, app.getState().plan, kind)
      if (met) act(met, { shift: e.shiftKey, alt: e.altKey })
    })
    return () => {
      stop()
      element.style.cursor = ''
    }
  }, [kind, view, scene])
  return null
}

function seeFromAbove({ camera }: RootState): void {
  const fall = -camera.getWorldDirection(camera.position.clone()).z
  if (fall < FLAT) look('above')
}

type Act = (met: Met, keys: PickKeys) => void
type Tell = (e: MouseEvent, act: Act) => void

function listen(element: HTMLElement, tell: Tell): () => void {
  const until = new AbortController()
  const down = { x: 0, y: 0 }
  const onMove = (e: PointerEvent): void => {
    if (e.buttons === 0) tell(e, toolMove)
  }
  const onDown = (e: PointerEvent): void => {
    down.x = e.clientX
    down.y = e.clientY
  }
  const onClick = (e: MouseEvent): void => {
    if (Math.hypot(e.clientX - down.x, e.clientY - down.y) > CLICK_SLACK) return
    tell(e, (met, keys) => toolClick(met, { ...keys, twice: e.detail > 1 }))
  }
  element.addEventListener('pointermove', onMove, { signal: until.signal })
  element.addEventListener('pointerdown', onDown, { signal: until.signal })
  element.addEventListener('click', onClick, { signal: until.signal })
  return () => until.abort()
}
