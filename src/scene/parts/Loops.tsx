/** The bent bars of one row, countable: one instanced mesh, drawn in the girder's own coordinates. */
import { memo, useEffect, useLayoutEffect, useMemo, useRef } from 'react'
import { type InstancedMesh, Matrix4 } from 'three'
import type { LoopRow } from '../../plan/types'
import { useApp } from '../../state/store'
import { objectName } from '../names'
import { usePalette } from '../palette'
import { useSceneState } from '../scene-state'
import { type BarFineness, loopBar } from '../shapes/loop-bar'

/**
 * Above this many loops in a plan, and always without a graphics processor, each is drawn with the fewest faces that still
 * look like a bar: all loops together are most of the picture's faces.
 */
const MANY_LOOPS = 700

const fine: BarFineness = { sides: 6, bend: 4 }
const plain: BarFineness = { sides: 3, bend: 1 }

const ignore = (): void => {}

export const Loops = memo(function Loops({ row }: { row: LoopRow }) {
  const { loop } = usePalette()
  const many = useApp((s) => countLoops(s.plan.girders) > MANY_LOOPS)
  const simple = useSceneState((s) => s.software) || many
  const bar = useMemo(
    () => loopBar(row.height, row.barDiameter, simple ? plain : fine),
    [row.height, row.barDiameter, simple],
  )
  useEffect(() => () => bar.dispose(), [bar])
  const mesh = useRef<InstancedMesh>(null)
  useLayoutEffect(() => placeLoops(mesh.current!, row), [row])
  return (
    <instancedMesh
      key={row.count}
      ref={mesh}
      name={objectName({ kind: 'loop-row', id: row.id })}
      args={[bar, undefined, row.count]}
      geometry={bar}
      raycast={ignore}
    >
      <meshLambertMaterial color={loop} />
    </instancedMesh>
  )
})

const countLoops = (girders: readonly { loops: readonly LoopRow[] }[]): number =>
  girders.reduce((sum, g) => sum + g.loops.reduce((n, r) => n + r.count, 0), 0)

function placeLoops(mesh: InstancedMesh, { first, spacing, offset, count }: LoopRow): void {
  const place = new Matrix4()
  for (let i = 0; i < count; i++) mesh.setMatrixAt(i, place.makeTranslation(first + i * spacing, offset, 0))
  mesh.instanceMatrix.needsUpdate = true
  mesh.computeBoundingSphere()
}
