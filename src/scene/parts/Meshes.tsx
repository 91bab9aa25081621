/** Models placed as obstacles. One whose file was not read is a dotted cross where it would stand, with its name. */
import { memo, useEffect, useMemo, useRef } from 'react'
import type { Mesh as Mesh3D } from 'three'
import type { MeshObstacle, Vec3 } from '../../plan/types'
import { useApp } from '../../state/store'
import { useLeftOutTurning, useOnlyTurning } from '../frame/lighter'
import { usePlaneDrag } from '../handles/plane-drag'
import { raycastBox } from '../handles/raycast-box'
import { Ink } from '../Ink'
import { useLabel } from '../labels/registry'
import { Matte } from '../Matte'
import { useModel } from '../models'
import { objectName } from '../names'
import { usePalette } from '../palette'
import { picks, useMark } from '../pick'
import { useClash } from '../pictures'
import { meshMatrix } from '../place'
import { facets, sharpEdges } from '../shapes/solid'
import { thinned } from '../shapes/thinned'

/** Above this many triangles a model's edges would be a thicket, and slow to find. */
const MOST_EDGED = 40_000

/** Above this many a model is turned as a part of its triangles, where the processor alone draws. */
const MOST_TURNED = 60_000

export function Meshes() {
  const obstacles = useApp((s) => s.plan.obstacles)
  const hidden = useApp((s) => s.hidden)
  return obstacles.map((o) => {
    if (o.kind !== 'mesh' || hidden.includes(o.id)) return null
    return <Placed key={o.id} mesh={o} />
  })
}

function Placed({ mesh }: { mesh: MeshObstacle }) {
  const triangles = useModel(mesh.file)
  return triangles ? <Mesh mesh={mesh} triangles={triangles} /> : <Missing mesh={mesh} />
}

const Mesh = memo(function Mesh({ mesh, triangles }: { mesh: MeshObstacle; triangles: Float32Array }) {
  const palette = usePalette()
  const ref = useMemo(() => ({ kind: 'obstacle' as const, id: mesh.id }), [mesh.id])
  const mark = useMark(ref)
  const handlers = useMemo(() => picks(ref), [ref])
  const drag = usePlaneDrag(ref)
  const clash = useClash(mesh.id)
  const matrix = useMemo(() => meshMatrix(mesh), [mesh])
  const geometry = useMemo(() => facets(triangles), [triangles])
  const edges = useMemo(
    () => (triangles.length / 9 > MOST_EDGED ? [] : sharpEdges(geometry, 30)),
    [geometry, triangles],
  )
  const many = triangles.length / 9 > MOST_TURNED
  const whole = useRef<Mesh3D>(null)
  useLeftOutTurning(whole, many)
  useEffect(() => () => geometry.dispose(), [geometry])
  return (
    <group matrix={matrix} matrixAutoUpdate={false}>
      <mesh
        ref={whole}
        name={objectName(ref)}
        geometry={geometry}
        {...(edges.length > 0 ? {} : { raycast: raycastBox })}
        {...handlers}
        onPointerDown={drag}
      >
        <Matte
          color={mark === 'none' ? palette.concrete : palette.accent}
          opacity={clash ? 0.5 : 1}
          bothSides
        />
      </mesh>
      {many ? <Thinned triangles={triangles} color={palette.concrete} /> : null}
      <Ink points={edges} color={mark === 'none' ? palette.ink : palette.accent} opacity={0.55} />
    </group>
  )
})

/** What is seen of a large model while the camera moves. */
function Thinned({ triangles, color }: { triangles: Float32Array; color: string }) {
  const geometry = useMemo(() => facets(thinned(triangles, MOST_TURNED)), [triangles])
  const mesh = useRef<Mesh3D>(null)
  useOnlyTurning(mesh)
  useEffect(() => () => geometry.dispose(), [geometry])
  return (
    <mesh ref={mesh} geometry={geometry} visible={false} raycast={() => {}}>
      <Matte color={color} bothSides />
    </mesh>
  )
}

function Missing({ mesh }: { mesh: MeshObstacle }) {
  const { look } = usePalette()
  const at: Vec3 = mesh.at ?? [0, 0, 0]
  const [x, y, z] = at
  const cross = useMemo(
    () => [x - 1, y, z, x + 1, y, z, x, y - 1, z, x, y + 1, z, x, y, z - 1, x, y, z + 1],
    [x, y, z],
  )
  useLabel(`missing:${mesh.id}`, { at, text: `${mesh.name}: model not read`, tone: 'look', rank: 70 })
  return (
    <Ink
      name={objectName({ kind: 'obstacle', id: mesh.id })}
      points={cross}
      color={look}
      width={1.5}
      dash={0.1}
    />
  )
}
