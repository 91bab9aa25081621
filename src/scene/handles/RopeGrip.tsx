/** A rope under the pointer: unseen bars along its spans. In the Fall view a click chooses where the worker falls. */
import { useMemo } from 'react'
import { Matrix4, Quaternion, Vector3 } from 'three'
import type { Vec3 } from '../../plan/types'
import type { LineDetail } from '../../study/details'
import { picks } from '../pick'

const GRIP = 0.14

export function RopeGrip({ detail }: { detail: LineDetail }) {
  const handlers = useMemo(() => picks({ kind: 'line', id: detail.id }), [detail.id])
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

/** Places a bar of unit length along x between two points, short of the posts at its ends. */
function barBetween(a: Vec3, b: Vec3): Matrix4 {
  const [from, to] = [new Vector3(...a), new Vector3(...b)]
  const way = to.clone().sub(from)
  const turn = new Quaternion().setFromUnitVectors(new Vector3(1, 0, 0), way.clone().normalize())
  const middle = from.add(to).multiplyScalar(0.5)
  return new Matrix4().compose(middle, turn, new Vector3(Math.max(0.1, way.length() - 0.4), 1, 1))
}
