/**
 * Without a graphics processor the picture moves at one sample a pixel; once it stands still it is drawn once more with
 * four, so that a picture that is looked at has clean lines. With one it is always drawn so.
 */
import { useFrame, useThree } from '@react-three/fiber'
import { useEffect, useRef } from 'react'
import { app } from '../../state/store'
import { SAMPLES } from '../gl'
import { useSceneState } from '../scene-state'

/** Stillness before the fine picture, ms. */
const REST = 180

export function Still() {
  const software = useSceneState((s) => s.software)
  return software ? <FineWhenStill /> : null
}

function FineWhenStill() {
  const gl = useThree((s) => s.gl)
  const invalidate = useThree((s) => s.invalidate)
  const size = useThree((s) => s.size)
  const wait = useRef<ReturnType<typeof setTimeout>>(undefined)
  const fine = useRef(false)
  useEffect(() => () => clearTimeout(wait.current), [])
  useFrame(() => {
    clearTimeout(wait.current)
    const wanted = fine.current ? SAMPLES.still : SAMPLES.moving
    if (gl.getPixelRatio() !== wanted) {
      gl.setPixelRatio(wanted)
      gl.setSize(size.width, size.height)
    }
    gl.domElement.dataset.fine = String(fine.current)
    const rest = (): void => {
      // While a hand holds something the next move comes at any time, and the fine picture would be in its way.
      const held = app.getState().gesture !== null
      if (held) wait.current = setTimeout(rest, REST)
      else {
        fine.current = true
        invalidate()
      }
    }
    if (!fine.current) wait.current = setTimeout(rest, REST)
    fine.current = false
  }, -1)
  return null
}
