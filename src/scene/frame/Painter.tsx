/** Without a graphics processor a frame is drawn in layers, see `layerPainter`; with one it is drawn as a whole. */
import { useFrame, useThree } from '@react-three/fiber'
import { useEffect, useMemo } from 'react'
import { useSceneState } from '../scene-state'
import { layerPainter } from './in-layers'

export function Painter() {
  const software = useSceneState((s) => s.software)
  return software ? <InLayers /> : null
}

function InLayers() {
  const gl = useThree((s) => s.gl)
  const painter = useMemo(() => layerPainter(gl), [gl])
  useEffect(() => () => painter.dispose(), [painter])
  // A priority above 0 tells the canvas that drawing is done here.
  useFrame(({ scene, camera }) => painter.paint(scene, camera), 1)
  return null
}
