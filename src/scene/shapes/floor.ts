import type { FloorPoint } from '../../study/results'

export interface Deepest {
  station: number
  depth: number
}

/** The deepest point of a room's floor, the excess of the fall in time included; null where none is known. */
export function deepest(floor: readonly FloorPoint[]): Deepest | null {
  let found: Deepest | null = null
  for (const { station, depth, excess } of floor) {
    if (depth === null) continue
    const whole = depth + (excess ?? 0)
    if (!found || whole > found.depth) found = { station, depth: whole }
  }
  return found
}
