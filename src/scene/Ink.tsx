/** Inked lines of even width in pixels, whatever the distance: arrises, ropes, dimension lines. Never picked. */
import { useEffect, useMemo } from 'react'
import { LineMaterial } from 'three/addons/lines/LineMaterial.js'
import { LineSegments2 } from 'three/addons/lines/LineSegments2.js'
import { LineSegmentsGeometry } from 'three/addons/lines/LineSegmentsGeometry.js'

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

const ignore = (): void => {}

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
  const line = useMemo(() => {
    const made = new LineSegments2(new LineSegmentsGeometry(), new LineMaterial())
    made.raycast = ignore
    return made
  }, [])
  const geometry = useMemo(() => inkGeometry(points), [points])
  useEffect(() => () => geometry.dispose(), [geometry])
  useEffect(() => () => line.material.dispose(), [line])
  line.geometry = geometry
  if (dash > 0) line.computeLineDistances()
  style(line.material, { color, width, opacity, dash, through })
  return <primitive object={line} name={name} renderOrder={order} visible={points.length > 0} />
}

function inkGeometry(points: readonly number[] | Float32Array): LineSegmentsGeometry {
  const geometry = new LineSegmentsGeometry()
  geometry.setPositions(points.length > 0 ? (points as number[]) : [0, 0, 0, 0, 0, 0])
  return geometry
}

type Style = Required<Pick<InkProps, 'color' | 'width' | 'opacity' | 'dash' | 'through'>>

function style(material: LineMaterial, { color, width, opacity, dash, through }: Style): void {
  material.color.set(color)
  material.linewidth = width
  material.opacity = opacity
  material.transparent = opacity < 1 || through
  material.depthWrite = opacity === 1
  material.depthTest = !through
  if (material.dashed !== dash > 0) material.needsUpdate = true
  material.dashed = dash > 0
  material.dashSize = material.gapSize = dash || 1
}
