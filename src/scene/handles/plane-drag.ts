/** Obstacles are dragged level: at the height where they were taken, or up and down while Alt is held. */
import type { ThreeEvent } from '@react-three/fiber'
import type { Ray } from 'three'
import type { Plan, Vec3 } from '../../plan/types'
import { canDrag } from '../../state/drag'
import { beginGesture, cancelGesture, edit, endGesture } from '../../state/edit'
import { hasRef, type Ref } from '../../state/refs'
import { app } from '../../state/store'
import { tellDrag } from '../scene-state'
import { type Drag, startDrag, useView } from './drag'
import { alongAxis, onLevel } from './rays'

/** Steps of a dragged obstacle, m: 5 cm or 2 in. */
export const DRAG_STEP = { si: 0.05, us: 0.0508 } as const

type Shift = (by: Vec3) => (plan: Plan) => void
type Press = (e: ThreeEvent<PointerEvent>) => void

/** For a thing with one point: a box's centre, a model's place. Only what is selected is dragged. */
export function usePlaneDrag(ref: Ref, from: Vec3): Press {
  return useLevelDrag(ref, (by) => (plan) => {
    const o = plan.obstacles.find((x) => x.id === ref.id)
    if (o?.kind === 'box') o.center = moved(from, by)
    if (o?.kind === 'mesh') o.at = moved(from, by)
  })
}

/** For a thing with a path: all its points go along. */
export function usePathDrag(ref: Ref, path: readonly Vec3[]): Press {
  return useLevelDrag(ref, (by) => (plan) => {
    const o = plan.obstacles.find((x) => x.id === ref.id)
    if (o?.kind === 'lane') o.path = path.map((p) => moved(p, by))
  })
}

const tidy = (m: number): number => Math.round(m * 1e5) / 1e5
const moved = (p: Vec3, by: Vec3): Vec3 => [tidy(p[0] + by[0]), tidy(p[1] + by[1]), tidy(p[2] + by[2])]

function useLevelDrag(ref: Ref, shift: Shift): Press {
  const view = useView()
  return (e) => {
    if (!hasRef(app.getState().selection, ref) || !canDrag(ref)) return
    startDrag(e, view(), level(ref, e.point.toArray() as Vec3, shift))
  }
}

/** The hand holds the point `grip`; the thing moves by whole steps of where the ray meets that level. */
function level(ref: Ref, grip: Vec3, shift: Shift): Drag {
  const label = `move ${ref.id}`
  return {
    begin: () => {
      beginGesture(label)
      tellDrag(ref)
    },
    move: (ray, e) => {
      const by = e.altKey ? plumb(ray, grip) : flat(ray, grip)
      if (by) edit(label, shift(stepped(by)))
    },
    end: () => {
      endGesture()
      tellDrag(null)
    },
    cancel: () => {
      cancelGesture()
      tellDrag(null)
    },
  }
}

function flat(ray: Ray, grip: Vec3): Vec3 | null {
  const at = onLevel(ray, grip[2])
  return at && [at[0] - grip[0], at[1] - grip[1], 0]
}

function plumb(ray: Ray, grip: Vec3): Vec3 | null {
  const up = alongAxis(ray, grip, [0, 0, 1])
  return up === null ? null : [0, 0, up]
}

function stepped(by: Vec3): Vec3 {
  const step = DRAG_STEP[app.getState().units]
  return by.map((m) => Math.round(m / step) * step) as Vec3
}
