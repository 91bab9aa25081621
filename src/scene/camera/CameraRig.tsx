/** Orbit, pan and zoom by hand; and the way to the shots that are asked for, in under 150 ms or at once. */
import { OrbitControls } from '@react-three/drei'
import { type RootState, useFrame, useThree } from '@react-three/fiber'
import { useEffect, useRef } from 'react'
import { MOUSE, type PerspectiveCamera, Vector3 } from 'three'
import type { Vec3 } from '../../plan/types'
import { stillWanted } from '../../state/motion'
import { app, useApp } from '../../state/store'
import { lowestLevel } from '../extent'
import { shotSource } from '../pictures'
import { sceneState } from '../scene-state'
import type { Shot } from './fit'
import { shotOf } from './shots'

/** How long the camera takes to a shot, ms. */
const TRAVEL = 140

/** Priority of its frames: what else a frame does goes by where the camera stands in it. */
const BEFORE_OTHERS = -1

interface Orbit {
  target: Vector3
  enabled: boolean
  update: () => void
}

interface Way {
  from: { position: Vector3; target: Vector3 }
  to: Shot
  start: number
}

const buttons = { LEFT: MOUSE.ROTATE, MIDDLE: MOUSE.PAN, RIGHT: MOUSE.PAN }

export function CameraRig() {
  const camera = useThree((s) => s.camera) as PerspectiveCamera
  const controls = useThree((s) => s.controls) as unknown as Orbit | null
  const invalidate = useThree((s) => s.invalidate)
  const request = useApp((s) => s.camera)
  const way = useRef<Way | null>(null)
  const first = useRef(true)
  useEffect(() => {
    if (!controls) return
    const back = camera.position.clone().sub(controls.target)
    const shot = shotOf(request.to, shotSource(app.getState()), lensOf(camera), back.toArray() as Vec3)
    if (!shot) return
    if (first.current || stillWanted()) jump(camera, controls, shot)
    else way.current = setOut(camera, controls, shot)
    first.current = false
    invalidate()
  }, [request, camera, controls, invalidate])
  useFrame(() => {
    if (!way.current || !controls) return
    // Whoever takes hold of something on the way holds the camera too: it must not move on under the hand.
    if (!controls.enabled) way.current = null
    else if (go(camera, controls, way.current)) way.current = null
    else invalidate()
  }, BEFORE_OTHERS)
  useFrame(tellUnder)
  return (
    <OrbitControls makeDefault enableDamping={false} zoomToCursor screenSpacePanning mouseButtons={buttons} />
  )
}

/** Tells, when it changes, whether the camera stands below everything that lies under the site. */
function tellUnder({ camera }: RootState): void {
  const level = lowestLevel(app.getState().plan)
  const under = level !== null && camera.position.z < level
  if (under !== sceneState.getState().under) sceneState.setState({ under })
}

const lensOf = (camera: PerspectiveCamera) => ({ fov: camera.fov, aspect: camera.aspect })

function setOut(camera: PerspectiveCamera, controls: Orbit, to: Shot): Way {
  const from = { position: camera.position.clone(), target: controls.target.clone() }
  return { from, to, start: performance.now() }
}

/** One frame on the way; true once there. */
function go(camera: PerspectiveCamera, controls: Orbit, { from, to, start }: Way): boolean {
  const t = Math.min(1, (performance.now() - start) / TRAVEL)
  const eased = 1 - (1 - t) ** 3
  camera.position.lerpVectors(from.position, new Vector3(...to.position), eased)
  controls.target.lerpVectors(from.target, new Vector3(...to.target), eased)
  controls.update()
  return t === 1
}

function jump(camera: PerspectiveCamera, controls: Orbit, { position, target }: Shot): void {
  camera.position.set(...position)
  controls.target.set(...target)
  controls.update()
}
