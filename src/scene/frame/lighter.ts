/**
 * A large site is turned by the hand without a graphics card too: while the camera moves, what is only seen through is left
 * out; the picture that stands has it again.
 */
import { useFrame } from '@react-three/fiber'
import { type RefObject, useRef } from 'react'
import { type Object3D, Quaternion, Vector3 } from 'three'
import { useSceneState } from '../scene-state'

/** Leaves an object out of frames in which the camera has moved, where `may` allows it and the processor alone draws. */
export function useLeftOutTurning(object: RefObject<Object3D | null>, may: boolean): void {
  const software = useSceneState((s) => s.software)
  const last = useRef({ at: new Vector3(), turn: new Quaternion() })
  useFrame(({ camera }) => {
    const { at, turn } = last.current
    const moved = !at.equals(camera.position) || !turn.equals(camera.quaternion)
    at.copy(camera.position)
    turn.copy(camera.quaternion)
    if (object.current) object.current.visible = !(software && may && moved)
  })
}
