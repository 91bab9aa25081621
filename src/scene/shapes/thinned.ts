/**
 * Every so many-th triangle of a great many, evenly over all of them: enough to see a model's shape while the camera moves.
 * @param triangles nine numbers a triangle.
 * @param most how many of them at most.
 */
export function thinned(triangles: Float32Array, most: number): Float32Array {
  const count = triangles.length / 9
  const every = Math.ceil(count / most)
  if (every <= 1) return triangles
  const kept = new Float32Array(Math.ceil(count / every) * 9)
  for (let to = 0, from = 0; from < count; to++, from += every) {
    kept.set(triangles.subarray(from * 9, from * 9 + 9), to * 9)
  }
  return kept
}
