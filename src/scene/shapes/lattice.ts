/** Lines of a grid on a level sheet, aligned with the plan's axes: one mesh of lines, no endless shader. */

export interface Sheet {
  min: [number, number]
  max: [number, number]
  elevation: number
}

/** A sheet grown to whole steps of the grid. */
export function wholeSteps({ min, max, elevation }: Sheet, step: number): Sheet {
  return {
    min: [Math.floor(min[0] / step) * step, Math.floor(min[1] / step) * step],
    max: [Math.ceil(max[0] / step) * step, Math.ceil(max[1] / step) * step],
    elevation,
  }
}

/** Pairs of points, flat; only lines whose number divides by `every` and not by `not`. */
export function latticeLines({ min, max, elevation }: Sheet, step: number, every = 1, not = 0): number[] {
  const z = elevation
  const wanted = (k: number): boolean => k % every === 0 && (not === 0 || k % not !== 0)
  const points: number[] = []
  for (let k = Math.ceil(min[0] / step - 1e-6); k <= max[0] / step + 1e-6; k++) {
    if (wanted(k)) points.push(k * step, min[1], z, k * step, max[1], z)
  }
  for (let k = Math.ceil(min[1] / step - 1e-6); k <= max[1] / step + 1e-6; k++) {
    if (wanted(k)) points.push(min[0], k * step, z, max[0], k * step, z)
  }
  return points
}
