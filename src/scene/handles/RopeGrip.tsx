/** A rope under the pointer: unseen bars along its spans. In the Fall view a click chooses where the worker falls. */
import type { ThreeEvent } from '@react-three/fiber'
import { useMemo } from 'react'
import { Matrix4, Quaternion, Vector3 } from 'three'
import type { Vec3 } from '../../plan/types'
import { dropAtPoint } from '../../state/fall/drop-actions'
import { app } from '../../state/store'
import type { LineDetail } from '../../study/details'
import { CLICK_SLACK, picks } from '../pick'

const GRIP = 0.2

export function RopeGrip({ detail }: { detail: LineDetail }) {
  const handlers = useMemo(() => ropePicks(detail.id), [detail.id])
  return detail.heads.slice(1).map((head, i) => (
    <mesh
      key={i}
      name={`rope-grip:${detail.id}:${i}`}
      matrix={barBetween(detail.heads[i]!, head)}
      matrixAutoUpdate={false}
      visible={false}
      {...handlers}
    >
      <boxGeometry args={[1, GRIP, GRIP]} />
    </mesh>
  ))
}

function ropePicks(line: string) {
  const handlers = picks({ kind: 'line', id: line })
  return {
    ...handlers,
    onClick: (e: ThreeEvent<MouseEvent>) => {
      handlers.onClick(e)
      const { view, tool } = app.getState()
      if (view !== 'fall' || tool.kind !== 'select' || e.delta > CLICK_SLACK) return
      dropAtPoint(line, [e.point.x, e.point.y, e.point.z], e.nativeEvent.shiftKey)
    },
  }
}

/** Places a bar of unit length along x between two points, short of the posts at its ends. */
function barBetween(a: Vec3, b: Vec3): Matrix4 {
  const [from, to] = [new Vector3(...a), new Vector3(...b)]
  const way = to.clone().sub(from)
  const turn = new Quaternion().setFromUnitVectors(new Vector3(1, 0, 0), way.clone().normalize())
  const middle = from.add(to).multiplyScalar(0.5)
  return new Matrix4().compose(middle, turn, new Vector3(Math.max(0.1, way.length() - 0.4), 1, 1))
}
