/** The room that a fall needs, under every line: a translucent skin, its lowest line firm, what it hits cut out. */
import { memo, useEffect, useMemo } from 'react'
import { BufferAttribute, BufferGeometry, type Matrix4 } from 'three'
import { useApp } from '../../state/store'
import { Ink } from '../Ink'
import { roomName } from '../names'
import { usePalette } from '../palette'
import { type RoomSkin, useClashIds, useFocusLine, useRooms, useWorstPlaces } from '../pictures'
import { clashBoxes } from '../shapes/clash-boxes'
import { skinMaterial, styleSkin } from '../shapes/skin-material'
import { chain } from '../shapes/solid'

export function Rooms() {
  const rooms = useRooms()
  const focus = useFocusLine()
  const hidden = useApp((s) => s.hidden)
  const boxes = useClashBoxes()
  return rooms
    .filter((room) => !hidden.includes(room.line))
    .map((room) => <Room key={room.line} room={room} focused={room.line === focus} boxes={boxes} />)
}

function useClashBoxes(): Matrix4[] {
  const plan = useApp((s) => s.plan)
  const ids = useClashIds()
  const at = useWorstPlaces()
  const { obstacles, girders } = plan
  // biome-ignore lint/correctness/useExhaustiveDependencies: the boxes depend on these parts of the plan alone
  return useMemo(() => clashBoxes(plan, ids, at), [obstacles, girders, ids, at])
}

interface RoomProps {
  room: RoomSkin
  focused: boolean
  boxes: readonly Matrix4[]
}

const Room = memo(function Room({ room, focused, boxes }: RoomProps) {
  const palette = usePalette()
  const geometry = useMemo(() => skinGeometry(room), [room])
  const material = useMemo(skinMaterial, [])
  const keel = useMemo(() => chain(room.keel), [room.keel])
  useEffect(() => () => geometry.dispose(), [geometry])
  useEffect(() => () => material.dispose(), [material])
  styleSkin(material, { skin: palette.room, fails: palette.fails, density: focused ? 0.15 : 0.08, boxes })
  return (
    <>
      <mesh
        name={roomName(room.line)}
        geometry={geometry}
        material={material}
        renderOrder={5}
        raycast={() => {}}
        onBeforeRender={(gl) => {
          material.uniforms.pixels!.value = gl.getPixelRatio()
        }}
      />
      <Ink
        name={`${roomName(room.line)}:keel`}
        points={keel}
        color={palette.room}
        width={focused ? 2.25 : 1.25}
        order={6}
      />
    </>
  )
})

function skinGeometry({ positions, indices }: RoomSkin): BufferGeometry {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  geometry.setIndex(new BufferAttribute(indices, 1))
  geometry.computeVertexNormals()
  return geometry
}
