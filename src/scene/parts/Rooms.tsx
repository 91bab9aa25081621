/** The room that a fall needs, under every line: a translucent skin, its lowest line firm, what it hits cut out. */
import { memo, useEffect, useMemo, useRef } from 'react'
import { BufferAttribute, BufferGeometry, type Matrix4, type Mesh } from 'three'
import type { Skin } from '../../geometry/room/skin/skin'
import { useApp } from '../../state/store'
import { useNotShown } from '../compare/stepped-aside'
import { useLeftOutTurning } from '../frame/lighter'
import { Ink } from '../Ink'
import { roomName } from '../names'
import { usePalette } from '../palette'
import { useClashIds, useFocusLine, useLineGirder, useRooms, useWorstPlaces } from '../pictures'
import { boxesNear, clashBoxes } from '../shapes/clash-boxes'
import { keelOf, rimOf, soffitOf } from '../shapes/room-lines'
import { skinMaterial, styleSkin } from '../shapes/skin-material'

/** With more rooms than these, those that are not looked at are drawn by their edges alone while the camera turns. */
const MANY = 4

export function Rooms() {
  const rooms = useRooms()
  const focus = useFocusLine()
  const hidden = useNotShown()
  const boxes = useClashBoxes()
  return rooms
    .filter((room) => !hidden.includes(room.line))
    .map((room) => (
      <Room
        key={room.line}
        room={room}
        focused={room.line === focus}
        many={rooms.length > MANY}
        boxes={boxes}
      />
    ))
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
  room: Skin
  focused: boolean
  many: boolean
  boxes: readonly Matrix4[]
}

const Room = memo(function Room({ room, focused, many, boxes }: RoomProps) {
  const palette = usePalette()
  const skin = useRef<Mesh>(null)
  useLeftOutTurning(skin, many && !focused)
  const geometry = useMemo(() => skinGeometry(room), [room])
  const material = useMemo(skinMaterial, [])
  const girder = useLineGirder(room.line)
  const keel = useMemo(() => keelOf(room.spine, girder), [room.spine, girder])
  const rim = useMemo(() => rimOf(room, girder), [room, girder])
  const near = useMemo(() => boxesNear(boxes, geometry.boundingBox!), [boxes, geometry])
  useEffect(() => () => geometry.dispose(), [geometry])
  useEffect(() => () => material.dispose(), [material])
  styleSkin(material, {
    skin: palette.room,
    fails: palette.fails,
    density: focused ? 0.16 : 0.08,
    soffit: girder ? soffitOf(girder) : nowhere,
    boxes: near,
  })
  return (
    <>
      <mesh
        ref={skin}
        name={roomName(room.line)}
        geometry={geometry}
        material={material}
        renderOrder={5}
        raycast={() => {}}
        onBeforeRender={(gl) => {
          material.uniforms.pixels!.value = gl.getPixelRatio()
        }}
      />
      <Ink points={rim} color={palette.room} opacity={focused ? 0.5 : 0.3} order={6} />
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

const nowhere = [0, 0, Number.NEGATIVE_INFINITY] as const

function skinGeometry({ positions, indices }: Skin): BufferGeometry {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  geometry.setIndex(new BufferAttribute(indices, 1))
  geometry.computeVertexNormals()
  geometry.computeBoundingBox()
  return geometry
}
