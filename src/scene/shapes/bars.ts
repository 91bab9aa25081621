/** Square bars between two points, one pair of sides upright: bracing. */
import { BoxGeometry, type BufferGeometry, Matrix4, Vector3 } from 'three'
import { mergeGeometries } from 'three/addons/utils/BufferGeometryUtils.js'
import type { Bar } from '../../geometry/gaps/girder-solid'

function oneBar({ from, to, size }: Bar): BufferGeometry {
  const [a, b] = [new Vector3(...from), new Vector3(...to)]
  const along = b.clone().sub(a)
  const length = along.length()
  along.normalize()
  const across = new Vector3(-along.y, along.x, 0)
  if (across.lengthSq() < 1e-9) across.set(0, 1, 0)
  across.normalize()
  const place = new Matrix4().makeBasis(along, across, along.clone().cross(across))
  place.setPosition(a.add(b).multiplyScalar(0.5))
  return new BoxGeometry(length, size, size).applyMatrix4(place)
}

/** All bars as one geometry. */
export const barsGeometry = (bars: readonly Bar[]): BufferGeometry => mergeGeometries(bars.map(oneBar))
