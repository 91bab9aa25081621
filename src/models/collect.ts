/** Collects triangles from indexed meshes, moved by their matrices. */

export class TriangleCollector {
  private data = new Float32Array(9 * 1024)
  private used = 0

  get count(): number {
    return this.used / 9
  }

  /**
   * Adds a mesh: positions with `stride` numbers for each vertex, indices (null: in order), and a column-major 4 x 4
   * matrix that moves it (null: none). An index past the vertices counts as an error.
   */
  add(
    positions: ArrayLike<number>,
    stride: number,
    indices: ArrayLike<number> | null,
    m: ArrayLike<number> | null,
  ): void {
    const vertices = Math.floor(positions.length / stride)
    const corners = Math.floor((indices ? indices.length : vertices) / 3) * 3
    this.reserve(corners * 3)
    for (let i = 0; i < corners; i++) {
      const v = indices ? indices[i]! : i
      if (v >= vertices) throw new Error('a triangle names a corner that the file does not have')
      this.put(positions[v * stride]!, positions[v * stride + 1]!, positions[v * stride + 2]!, m)
    }
  }

  private put(x: number, y: number, z: number, m: ArrayLike<number> | null): void {
    const at = this.used
    this.data[at] = m ? m[0]! * x + m[4]! * y + m[8]! * z + m[12]! : x
    this.data[at + 1] = m ? m[1]! * x + m[5]! * y + m[9]! * z + m[13]! : y
    this.data[at + 2] = m ? m[2]! * x + m[6]! * y + m[10]! * z + m[14]! : z
    this.used = at + 3
  }

  private reserve(more: number): void {
    if (this.used + more <= this.data.length) return
    const larger = new Float32Array(Math.max(this.used + more, this.data.length * 2))
    larger.set(this.data.subarray(0, this.used))
    this.data = larger
  }

  /** All triangles so far. */
  triangles(): Float32Array {
    return this.data.slice(0, this.used)
  }
}
