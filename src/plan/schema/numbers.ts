/**
 * The kinds of number a plan holds, with the widest bounds that still mean something. The bounds are not limits of
 * practice (those are in the basis): they only keep slips of the decimal point and hostile files out of the solver.
 */
import { z } from 'zod'

/** m, more than any bridge measures. */
const LARGEST_LENGTH = 10_000
/** m; map grids have coordinates of millions of metres. */
const LARGEST_COORDINATE = 1e8
/** N, and N per unit strain or N/m: a thousand times what the largest part of this kind has. */
const LARGEST_FORCE = 1e9
const LARGEST_STIFFNESS = 1e12
/** The least figure that can be told from a slip, in whatever SI unit it has. */
const SMALLEST = 1e-6

/** m, more than nothing: a size, a diameter, a spacing. */
export const size = z.number().min(SMALLEST).max(LARGEST_LENGTH)
/** m, nothing or more: a margin, a stretch. */
export const distance = z.number().min(0).max(LARGEST_LENGTH)
/** m, either sign, measured from a girder. */
export const offset = z.number().min(-LARGEST_LENGTH).max(LARGEST_LENGTH)
/** m, in the plan's own axes. */
export const coordinate = z.number().min(-LARGEST_COORDINATE).max(LARGEST_COORDINATE)
/** N */
export const force = z.number().min(SMALLEST).max(LARGEST_FORCE)
/** N/m or N per unit strain */
export const stiffness = z.number().min(SMALLEST).max(LARGEST_STIFFNESS)
/** Pa */
export const stress = z.number().min(1).max(1e11)
/** kg */
export const mass = z.number().min(SMALLEST).max(100_000)
/** kg of one person, dressed, with tools */
export const bodyMass = z.number().min(1).max(1_000)
/** degC */
export const temperature = z.number().min(-100).max(150)
/** Degrees from the vertical or the horizontal */
export const angle = z.number().min(0).max(90)
/** Degrees, any turn */
export const turn = z.number().min(-3_600).max(3_600)
export const factor = z.number().min(1).max(1_000)
export const count = z.int().min(0).max(100_000)
export const positiveCount = z.int().min(1).max(20_000)

export const vec2 = z.tuple([coordinate, coordinate])
export const vec3 = z.tuple([coordinate, coordinate, coordinate])

/** A figure with two ends, low first. */
export function range(end: z.ZodNumber) {
  return z
    .object({ low: end, high: end })
    .refine((r) => r.low <= r.high, { error: 'the low end is above the high end', path: ['low'] })
}

/** A list of so many entries at most: far beyond any site, but a study of it still ends. */
export function list<T extends z.ZodType>(entry: T, most: number, least = 0) {
  return z.array(entry).min(least).max(most)
}

export const text = z.string()
export const id = z
  .string()
  .min(1)
  .max(80)
  .refine((s) => s.trim() === s, { error: 'an id must not begin or end with a space' })
export const source = z.string().refine((s) => s.trim() !== '', {
  error: 'say where the figures come from: a document and its clause, or "user"',
})
