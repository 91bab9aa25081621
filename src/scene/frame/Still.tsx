/**
 * Without a graphics processor the picture moves with fewer samples; once it stands still it is drawn once more with four
 * a pixel, so that a picture that is looked at has clean lines and is whole, see `Pace`. With one it is always drawn so.
 */
import { useFrame, useThree } from '@react-three/fiber'
import { useEffect, useRef } from 'react'
import type { Camera, EventDispatcher, Quaternion, Vector3 } from 'three'
import { app } from '../../state/store'
import { useSceneState } from '../scene-state'
import { pace, paceOf, type Seen, SHARPNESS } from './pace'

/** Stillness before the next finer picture, ms; longer while the camera is held, for then the next move is likely. */
const REST = 180
const REST_HELD = 400

/** A camera that moves less from frame to frame stands, m and radians: orbiting rounds its place anew in each. */
const STANDS = 1e-6

export function Still() {
  const software = useSceneState((s) => s.software)
  return software ? <FineWhenStill /> : null
}

const dragging = (): boolean => app.getState().gesture !== null

function FineWhenStill() {
  const gl = useThree((s) => s.gl)
  const invalidate = useThree((s) => s.invalidate)
  const size = useThree((s) => s.size)
  const held = useCameraHeld()
  const turned = useTurned()
  const stopWaiting = useRef(() => {})
  const rested = useRef(false)
  useEffect(
    () => () => {
      stopWaiting.current()
      pace.now = 'still'
    },
    [],
  )
  useFrame(({ camera }) => {
    stopWaiting.current()
    const now = { dragging: dragging(), held: held.current, rested: rested.current }
    pace.now = paceOf({ ...turned(camera), ...now })
    rested.current = false
    const wanted = SHARPNESS[pace.now]
    if (gl.getPixelRatio() !== wanted) {
      gl.setPixelRatio(wanted)
      gl.setSize(size.width, size.height)
    }
    gl.domElement.dataset.fine = String(pace.now === 'still')
    const rest = (): void => {
      // While a hand holds something the next move comes at any time, and a finer picture would be in its way.
      if (dragging() || (held.current && pace.now === 'moving')) stopWaiting.current = inAWhile(rest, REST)
      else {
        rested.current = true
        invalidate()
      }
    }
    if (pace.now === 'still') return
    // While a hand holds something only its letting go counts, and a frame asked for in between would delay its next move.
    stopWaiting.current = now.dragging ? afterA(rest, REST) : inAWhile(rest, held.current ? REST_HELD : REST)
  }, -0.5)
  return null
}

function afterA(then: () => void, after: number): () => void {
  const timer = setTimeout(then, after)
  return () => clearTimeout(timer)
}

/** Does something `after` ms, counted from when this frame is to be seen, which may be long after it was asked for. */
function inAWhile(then: () => void, after: number): () => void {
  let stop = (): void => {}
  const frame = requestAnimationFrame(() => {
    stop = afterA(then, after)
  })
  return () => {
    cancelAnimationFrame(frame)
    stop()
  }
}

/** Whether a button is down that turns or moves the camera. */
function useCameraHeld() {
  const controls = useThree((s) => s.controls) as EventDispatcher<{ start: object; end: object }> | null
  const held = useRef(false)
  useEffect(() => {
    const take = (): void => {
      held.current = true
    }
    const leave = (): void => {
      held.current = false
    }
    controls?.addEventListener('start', take)
    controls?.addEventListener('end', leave)
    return () => {
      controls?.removeEventListener('start', take)
      controls?.removeEventListener('end', leave)
    }
  }, [controls])
  return held
}

/** Whether the camera has moved since the last time it was asked, and whether not long before. */
function useTurned(): (camera: Camera) => Pick<Seen, 'turned' | 'turnedLately'> {
  const last = useRef<{ at: Vector3; turn: Quaternion; when: number } | null>(null)
  return ({ position, quaternion }) => {
    const before = last.current
    const turned =
      before !== null &&
      !(before.at.distanceTo(position) < STANDS && before.turn.angleTo(quaternion) < STANDS)
    const now = performance.now()
    const when = turned ? now : (before?.when ?? Number.NEGATIVE_INFINITY)
    last.current = { at: position.clone(), turn: quaternion.clone(), when }
    return { turned, turnedLately: now - when < REST }
  }
}
