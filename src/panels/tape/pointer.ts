/** The pointer on the tape: what it meets, what it drags, how it pans. */
import { type PointerEvent, useRef } from 'react'
import { refOf } from '../../drawings/SvgPicture'
import { toModel, type View } from '../../drawings/view'
import { hover, select } from '../../state/actions'
import { beginDrag, cancelDrag, canDrag, dragTo, endDrag } from '../../state/drag'
import { inGesture } from '../../state/edit'
import { dropHere } from '../../state/fall/drop-actions'
import type { Ref } from '../../state/refs'
import { app } from '../../state/store'
import type { TapeZoom } from './zoom'

interface Going {
  kind: 'drag' | 'pan'
  ref: Ref | null
  x: number
  /** Metres from the thing's station to where it was taken hold of: it must not jump. */
  grip: number
  moved: boolean
}

/** Below this a press is a click, px. */
const SLACK = 3

/** The thing that a mark stands for: 'stanchion:S2', 'tie-back:T1:strap'; null for marks of nothing in the plan. */
function refOfMark(text: string | null): Ref | null {
  const [kind, id, foot] = (text ?? '').split(':')
  if (!kind || !id) return null
  if (kind === 'room' || kind === 'span') return { kind: 'line', id }
  const kinds = ['girder', 'line', 'stanchion', 'tie-back', 'obstacle', 'deck', 'worker']
  if (!kinds.includes(kind)) return null
  const ref: Ref = { kind: kind as Ref['kind'], id }
  return foot === 'strap' || foot === 'tensioner' ? { ...ref, foot } : ref
}

export function useTapePointer(view: View, zoom: TapeZoom, setHeld: (held: string | null) => void) {
  const going = useRef<Going | null>(null)
  const at = (e: PointerEvent<HTMLElement>): [number, number] => {
    const box = e.currentTarget.getBoundingClientRect()
    return [e.clientX - box.left, e.clientY - box.top]
  }
  const down = (e: PointerEvent<HTMLElement>): void => {
    if (e.button === 2) selectUnder(e)
    if (e.button !== 0) return
    const ref = refOfMark(refOf(e.target))
    const [x] = at(e)
    const grabs = ref !== null && (ref.kind === 'stanchion' || ref.kind === 'tie-back') && canDrag(ref)
    going.current = {
      kind: grabs ? 'drag' : 'pan',
      ref,
      x,
      grip: grabs ? gripOf(e.target, x, view) : 0,
      moved: false,
    }
    if (ref) select(ref, e.ctrlKey || e.metaKey)
    e.currentTarget.setPointerCapture(e.pointerId)
  }
  const move = (e: PointerEvent<HTMLElement>): void => {
    const [x, y] = at(e)
    const now = going.current
    if (!now) {
      hover(refOfMark(refOf(e.target)))
      return
    }
    if (!now.moved && Math.abs(x - now.x) < SLACK) return
    if (now.kind === 'pan') {
      zoom.pan((now.x - x) / view.scaleX)
      now.x = x
    } else if (now.ref) {
      if (!now.moved) beginDrag(now.ref)
      else if (!inGesture()) return
      setHeld(dragTo(now.ref, toModel(view, [x, y])[0] - now.grip, { free: e.altKey, together: e.shiftKey }))
    }
    now.moved = true
  }
  const up = (e: PointerEvent<HTMLElement>): void => {
    const now = going.current
    if (now && !now.moved && dropsHere(now)) dropHere(lineOnTape(), toModel(view, at(e))[0], e.shiftKey)
    if (going.current?.kind === 'drag' && going.current.moved) endDrag()
    else if (going.current && !going.current.moved && !going.current.ref) select(null)
    going.current = null
    setHeld(null)
  }
  const cancel = (): void => {
    if (going.current?.kind === 'drag' && going.current.moved) cancelDrag()
    going.current = null
    setHeld(null)
  }
  const leave = (): void => {
    if (!going.current) hover(null)
  }
  return { down, move, up, cancel, leave }
}

/** In the Fall view a click beside every other thing says where somebody falls. */
const dropsHere = ({ ref }: Going): boolean =>
  app.getState().view === 'fall' && (ref === null || ref.kind === 'line' || ref.kind === 'girder')

const lineOnTape = (): string => app.getState().tapeLine ?? app.getState().plan.lines[0]?.id ?? ''

function selectUnder(e: PointerEvent<HTMLElement>): void {
  const ref = refOfMark(refOf(e.target))
  if (ref) select(ref)
}

/** From the middle of a handle to the pointer, m; 0 where a drawn mark was met. */
function gripOf(target: EventTarget, x: number, view: View): number {
  const centre = target instanceof HTMLElement ? Number(target.dataset.x) : Number.NaN
  return Number.isFinite(centre) ? (x - centre) / view.scaleX : 0
}
