/** Where a stanchion is taken hold of: an unseen cylinder round its post, dragged along the girder from gap to gap. */
import { memo, useMemo } from 'react'
import { girderFrame } from '../../geometry/girder'
import { headHeight } from '../../geometry/line'
import type { Girder, Stanchion, Vec3 } from '../../plan/types'
import { beginDrag, cancelDrag, canDrag, dragTo, endDrag } from '../../state/drag'
import type { Ref } from '../../state/refs'
import { app } from '../../state/store'
import { objectName } from '../names'
import { GRIP, picks } from '../pick'
import { overGirder } from '../place'
import { tellDrag } from '../scene-state'
import { type Drag, startDrag, useView } from './drag'
import { alongAxis } from './rays'

const REACH = 0.16

interface Props {
  girder: Girder
  stanchion: Stanchion
  /** Of its head over the girder, m. */
  height: number
}

export const StanchionGrip = memo(function StanchionGrip({ girder, stanchion, height }: Props) {
  const view = useView()
  const ref = useMemo((): Ref => ({ kind: 'stanchion', id: stanchion.id }), [stanchion.id])
  const handlers = useMemo(() => picks(ref), [ref])
  return (
    <mesh
      name={objectName(ref)}
      position={overGirder(girder, stanchion.station, stanchion.offset, height / 2)}
      rotation={[Math.PI / 2, 0, 0]}
      visible={false}
      userData={GRIP}
      {...handlers}
      onPointerDown={(e) => canDrag(ref) && startDrag(e, view(), slide(ref))}
    >
      <cylinderGeometry args={[REACH, REACH, height + 2 * REACH, 8]} />
    </mesh>
  )
})

/** Along the girder at half the post's height, where the grip's middle is. */
const slide = (ref: Ref): Drag => ({
  begin: () => {
    beginDrag(ref)
    tellDrag(ref)
  },
  move: (ray, e) => {
    const axis = axisOf(ref.id)
    const station = axis && alongAxis(ray, axis.origin, axis.along)
    if (station !== null) tellDrag(ref, dragTo(ref, station, { free: e.altKey, together: e.shiftKey }))
  },
  end: () => {
    endDrag()
    tellDrag(null)
  },
  cancel: () => {
    cancelDrag()
    tellDrag(null)
  },
})

function axisOf(id: string): { origin: Vec3; along: Vec3 } | null {
  const { plan } = app.getState()
  for (const line of plan.lines) {
    const stanchion = line.stanchions.find((s) => s.id === id)
    const girder = plan.girders.find((g) => g.id === line.girder)
    if (!stanchion || !girder) continue
    const height = (headHeight(plan, stanchion) ?? 1) / 2
    return { origin: overGirder(girder, 0, stanchion.offset, height), along: girderFrame(girder).along }
  }
  return null
}
