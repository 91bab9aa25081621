/** In every frame that is drawn: moves the labels to where their points are seen. */
import { useFrame, useThree } from '@react-three/fiber'
import { useEffect } from 'react'
import { Vector3 } from 'three'
import { seats } from './seats'

const p = new Vector3()

export function Projector() {
  const invalidate = useThree((s) => s.invalidate)
  useEffect(() => {
    seats.changed = () => invalidate()
    return () => {
      seats.changed = () => {}
    }
  }, [invalidate])
  useFrame(({ camera, size }) => {
    camera.updateMatrixWorld()
    seats.move((at) => {
      p.set(...at).project(camera)
      if (p.z > 1 || p.z < -1) return null
      return { x: ((p.x + 1) / 2) * size.width, y: ((1 - p.y) / 2) * size.height }
    }, size)
  })
  return null
}
