/** What stands about in plan is dragged level, at the height where it was taken, or up and down while Alt is held. */
import type { ThreeEvent } from '@react-three/fiber'
import type { Ray } from 'three'
import type { Vec3 } from '../../plan/types'
import type { Ref } from '../../state/refs'
import { beginShift, cancelShift, endShift, shiftTo, takenWith } from '../../state/shift'
import { tellDrag } from '../scene-state'
import { type Drag, startDrag, useView } from './drag'
import { alongAxis, onLevel } from './rays'

type Press = (e: ThreeEvent<PointerEvent>) => void

/** For a girder, a deck, a box, a lane, a model: only what is selected is dragged, and all that is selected with it. */
export function usePlaneDrag(ref: Ref): Press {
  const view = useView()
  return (e) => {
    const refs = takenWith(ref)
    if (refs.length > 0) startDrag(e, view(), level(ref, refs, e.point.toArray() as Vec3))
  }
}

/** The hand holds the point `grip`; with Shift it goes along x or y alone. */
function level(ref: Ref, refs: Ref[], grip: Vec3): Drag {
  return {
    begin: () => {
      beginShift(refs.length === 1 ? `move ${ref.id}` : `move ${refs.length} things`)
      tellDrag(ref)
    },
    move: (ray, e) => {
      const by = e.altKey ? plumb(ray, grip) : flat(ray, grip)
      if (by) shiftTo(refs, e.shiftKey && !e.altKey ? square(by) : by)
    },
    end: () => {
      endShift()
      tellDrag(null)
    },
    cancel: () => {
      cancelShift()
      tellDrag(null)
    },
  }
}

const square = ([x, y, z]: Vec3): Vec3 => (Math.abs(x) >= Math.abs(y) ? [x, 0, z] : [0, y, z])

function flat(ray: Ray, grip: Vec3): Vec3 | null {
  const at = onLevel(ray, grip[2])
  return at && [at[0] - grip[0], at[1] - grip[1], 0]
}

function plumb(ray: Ray, grip: Vec3): Vec3 | null {
  const up = alongAxis(ray, grip, [0, 0, 1])
  return up === null ? null : [0, 0, up]
}
