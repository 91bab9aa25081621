/**
 * A large site is turned by the hand without a graphics card too: while the camera moves, what is only seen through is left
 * out, and a stand-in is drawn for what has a great many faces; the picture that stands has all of it again.
 */
import { useFrame } from '@react-three/fiber'
import type { RefObject } from 'react'
import type { Object3D } from 'three'
import { pace } from './pace'

/** Leaves an object out of frames in which the camera moves, where `may` allows it and the processor alone draws. */
export function useLeftOutTurning(object: RefObject<Object3D | null>, may: boolean): void {
  useFrame(() => {
    if (object.current) object.current.visible = !(may && pace.now === 'turning')
  })
}

/** Draws an object only in frames in which the camera moves and the processor alone draws: it stands in for another. */
export function useOnlyTurning(object: RefObject<Object3D | null>): void {
  useFrame(() => {
    if (object.current) object.current.visible = pace.now === 'turning'
  })
}
