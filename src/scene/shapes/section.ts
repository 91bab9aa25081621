/** A girder as a solid with the outline of its section, plumb ends, and its edges as a drafter would ink them. */
import { BufferAttribute, BufferGeometry } from 'three'
import type { GirderSection } from '../../plan/types'

/** Corners of the section from above right, counter-clockwise seen from the end: [offset, height], top at 0. */
function sectionOutline(s: GirderSection): [number, number][] {
  const [top, web, bottom] = [s.topWidth / 2, s.webThickness / 2, s.bottomWidth / 2]
  const [under, over] = [-s.topThickness, -(s.depth - s.bottomThickness)]
  const right: [number, number][] = [
    [-bottom, -s.depth],
    [-bottom, over],
    [-web, over],
    [-web, under],
    [-top, under],
    [-top, 0],
  ]
  return [...right, ...right.map(([y, z]): [number, number] => [-y, z]).reverse()]
}

/** The three rectangles that fill the section: [offset, offset, height, height]. */
function rectangles(s: GirderSection): [number, number, number, number][] {
  const over = -(s.depth - s.bottomThickness)
  return [
    [-s.bottomWidth / 2, s.bottomWidth / 2, -s.depth, over],
    [-s.webThickness / 2, s.webThickness / 2, over, -s.topThickness],
    [-s.topWidth / 2, s.topWidth / 2, -s.topThickness, 0],
  ]
}

/** x along the girder from 0 to `length`, y to the left, z up; flat faces. */
export function girderSolid(section: GirderSection, length: number): BufferGeometry {
  const outline = sectionOutline(section)
  const points: number[] = []
  const quad = (...corners: [number, number, number][]): void => {
    for (const i of [0, 1, 2, 0, 2, 3]) points.push(...corners[i]!)
  }
  outline.forEach(([y, z], i) => {
    const [y2, z2] = outline[(i + 1) % outline.length]!
    quad([0, y, z], [length, y, z], [length, y2, z2], [0, y2, z2])
  })
  for (const [y1, y2, z1, z2] of rectangles(section)) {
    quad([0, y1, z1], [0, y1, z2], [0, y2, z2], [0, y2, z1])
    quad([length, y1, z1], [length, y2, z1], [length, y2, z2], [length, y1, z2])
  }
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(points), 3))
  geometry.computeVertexNormals()
  return geometry
}

/** Edges as pairs of points, flat: the twelve arrises and both end outlines. */
export function girderEdges(section: GirderSection, length: number): number[] {
  const outline = sectionOutline(section)
  return outline.flatMap(([y, z], i) => {
    const [y2, z2] = outline[(i + 1) % outline.length]!
    return [0, y, z, length, y, z, 0, y, z, 0, y2, z2, length, y, z, length, y2, z2]
  })
}
