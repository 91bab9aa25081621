/** Inked lines of even width in pixels, whatever the distance: arrises, ropes, dimension lines. Never picked. */
import { useEffect, useMemo } from 'react'
import { type BufferGeometry, Mesh, type ShaderMaterial, type Vector2 } from 'three'
import { ribbonGeometry, setSegments } from './shapes/ribbon'
import { ribbonMaterial, styleRibbon } from './shapes/ribbon-material'

export interface InkProps {
  /** Pairs of points, flat. */
  points: readonly number[] | Float32Array
  color: string
  /** Pixels. */
  width?: number
  opacity?: number
  /** Length of dash and gap, m. */
  dash?: number
  /** Shows through whatever stands before it. */
  through?: boolean
  order?: number
  name?: string
}

export type InkMesh = Mesh<BufferGeometry, ShaderMaterial>

export function Ink({
  points,
  color,
  width = 1,
  opacity = 1,
  dash = 0,
  through = false,
  order = 0,
  name = '',
}: InkProps) {
  const geometry = useMemo(() => {
    const made = ribbonGeometry(points.length / 6)
    setSegments(made, points)
    return made
  }, [points])
  const line = useMemo(() => inkMesh(), [])
  useEffect(() => () => geometry.dispose(), [geometry])
  useEffect(() => () => line.material.dispose(), [line])
  line.geometry = geometry
  styleRibbon(line.material, { color, width, opacity, dash, through })
  return <primitive object={line} name={name} renderOrder={order} visible={points.length > 0} />
}

const ignore = (): void => {}

/** What draws ribbons as wide as they are to be; the geometry is given by whoever has it. */
export function inkMesh(geometry?: BufferGeometry): InkMesh {
  const line: InkMesh = new Mesh(geometry, ribbonMaterial())
  line.raycast = ignore
  line.onBeforeRender = (gl) => {
    // Where one sample stands for several pixels a line is one sample wide at least, or it would fall to pieces.
    const coarse = Math.min(1, gl.getPixelRatio())
    gl.getSize(line.material.uniforms.size!.value as Vector2).multiplyScalar(coarse)
  }
  return line
}
