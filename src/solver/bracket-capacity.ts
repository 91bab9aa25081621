/** What one loop can carry, and how near a levelling bolt stands to the girder's edge (mechanics section 7). */

/** Area of a round bar, m2. */
const barArea = (diameter: number): number => (Math.PI * diameter * diameter) / 4

/**
 * Pull at which a loop yields when pulled straight up, N: both legs of the bar, 2 x area x yield.
 * Pull-out of the concrete is another matter and not covered.
 */
export const straightCapacity = (diameter: number, yieldStress: number): number =>
  2 * barArea(diameter) * yieldStress

/**
 * Sideways pull at height `height` above the concrete at which one leg of a bar has its plastic hinge, N:
 * d^3/6 x yield over the height. Null where the height is not positive.
 */
export const bentCapacity = (diameter: number, yieldStress: number, height: number): number | null =>
  height > 0 ? ((diameter ** 3 / 6) * yieldStress) / height : null

/** Nearest levelling bolt to the edge of the girder's top, m: half-width - |offset| - boltsAcross/2; negative: off it. */
export const boltEdgeDistance = (topWidth: number, offset: number, boltsAcross: number): number =>
  topWidth / 2 - Math.abs(offset) - boltsAcross / 2
