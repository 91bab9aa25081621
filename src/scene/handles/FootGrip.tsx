/** The foot of a tie-back leg: an unseen ball round its loop, dragged from loop to loop and from row to row. */
import { memo, useMemo } from 'react'
import type { Girder } from '../../plan/types'
import { beginDrag, cancelDrag, canDrag, dragTo, endDrag } from '../../state/drag'
import type { Ref } from '../../state/refs'
import { app } from '../../state/store'
import { objectName } from '../names'
import { GRIP, picks } from '../pick'
import { tellDrag } from '../scene-state'
import type { StrapLeg } from '../shapes/strap'
import { type Drag, startDrag, useView } from './drag'
import { nearestPoint } from './rays'
import { loopPointsOf } from './snap'

const REACH = 0.13

export const FootGrip = memo(function FootGrip({ leg }: { leg: StrapLeg }) {
  const { tieBack, foot, end } = leg
  const view = useView()
  const ref = useMemo((): Ref => ({ kind: 'tie-back', id: tieBack, foot }), [tieBack, foot])
  const handlers = useMemo(() => picks(ref), [ref])
  return (
    <mesh
      name={objectName(ref)}
      position={[end[0], end[1], end[2] + 0.05]}
      visible={false}
      userData={GRIP}
      {...handlers}
      onPointerDown={(e) => canDrag(ref) && startDrag(e, view(), carry(ref))}
    >
      <sphereGeometry args={[REACH, 8, 6]} />
    </mesh>
  )
})

const carry = (ref: Ref): Drag => ({
  begin: () => {
    beginDrag(ref)
    tellDrag(ref)
  },
  move: (ray) => {
    const girder = girderOfTieBack(ref.id)
    if (!girder) return
    const loops = loopPointsOf(girder)
    const near = loops.at[nearestPoint(ray, loops.points)]
    if (near) dragTo(ref, near.station, {}, near.offset)
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

function girderOfTieBack(id: string): Girder | undefined {
  const { lines, girders } = app.getState().plan
  const line = lines.find((l) => l.tieBacks.some((t) => t.id === id))
  return line && girders.find((g) => g.id === line.girder)
}
