/**
 * Copies of one body, each in its place: one instanced mesh; without a graphics processor one merged mesh, see there. Never
 * picked: what can be taken hold of has a grip of its own.
 */
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react'
import type { BufferGeometry, Color, InstancedMesh, Matrix4 } from 'three'
import { useSceneState } from './scene-state'
import { colorCopies, mergeCopies } from './shapes/merged'

interface CopiesProps {
  name: string
  body: BufferGeometry
  places: readonly Matrix4[]
  /** One colour for all, or one for each. */
  color: string | readonly Color[]
}

export function Copies(props: CopiesProps) {
  const software = useSceneState((s) => s.software)
  // Until it is known what draws, they are made as the slower machine keeps them: there, making them twice would be felt.
  return software !== false ? <Merged {...props} /> : <Instanced key={props.places.length} {...props} />
}

const ignore = (): void => {}

function Instanced({ name, body, places, color }: CopiesProps) {
  const mesh = useRef<InstancedMesh>(null)
  useLayoutEffect(() => {
    const { current } = mesh
    if (!current) return
    for (const [i, place] of places.entries()) current.setMatrixAt(i, place)
    current.instanceMatrix.needsUpdate = true
    current.computeBoundingSphere()
  }, [places])
  useLayoutEffect(() => {
    const { current } = mesh
    if (!current || typeof color === 'string') return
    for (const [i, one] of color.entries()) current.setColorAt(i, one)
    if (current.instanceColor) current.instanceColor.needsUpdate = true
  }, [color])
  return (
    <instancedMesh
      ref={mesh}
      name={name}
      args={[body, undefined, places.length]}
      geometry={body}
      raycast={ignore}
    >
      <meshLambertMaterial {...(typeof color === 'string' ? { color } : {})} />
    </instancedMesh>
  )
}

function Merged({ name, body, places, color }: CopiesProps) {
  const merged = useMemo(() => mergeCopies(body, places), [body, places])
  useEffect(() => () => merged.dispose(), [merged])
  useLayoutEffect(() => {
    if (typeof color !== 'string') colorCopies(merged, color)
  }, [merged, color])
  return (
    <mesh name={name} geometry={merged} raycast={ignore}>
      <meshLambertMaterial {...(typeof color === 'string' ? { color } : { vertexColors: true })} />
    </mesh>
  )
}
