/** A closed surface as files of the fall room carry it. */
export interface Solid {
  name: string
  /** x, y, z of every vertex, m, z up. */
  positions: Float32Array
  /** Triangles, counter-clockwise from outside. */
  indices: Uint32Array
}
