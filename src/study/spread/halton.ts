/**
 * Scrambled Halton points: dimension j counts in the j-th prime, digits permuted by a seeded shuffle, the whole shifted
 * by a seeded offset modulo 1. Halton (1960), Numerische Mathematik 2, 84-90; shift: Cranley and Patterson (1976), SIAM J.
 * Numer. Anal. 13, 904-914. The same seed gives the same points everywhere.
 */

const PRIMES = [
  2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71, 73, 79, 83, 89, 97, 101, 103,
  107, 109, 113,
]

/** The most dimensions there are points for. */
export const MOST_DIMENSIONS = PRIMES.length

/** Chance from a seed: mulberry32, public domain, by T. Ettinger; 0 <= value < 1. */
function chance(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

/** A permutation of the digits 0 to base - 1 that leaves 0 where it is, so that a number's leading zeros stay zero. */
function shuffled(base: number, next: () => number): number[] {
  const digits = Array.from({ length: base }, (_, i) => i)
  for (let i = base - 1; i > 1; i--) {
    const j = 1 + Math.floor(next() * i)
    ;[digits[i], digits[j]] = [digits[j]!, digits[i]!]
  }
  return digits
}

/** Point `index` (from 0) of so many dimensions, each in [0, 1). */
export function haltonPoints(dimensions: number, seed: number): (index: number) => number[] {
  if (dimensions > MOST_DIMENSIONS)
    throw new Error(`there are points for ${MOST_DIMENSIONS} dimensions at most`)
  const next = chance(seed)
  const axes = PRIMES.slice(0, dimensions).map((base) => ({
    base,
    digits: shuffled(base, next),
    shift: next(),
  }))
  return (index) =>
    axes.map(({ base, digits, shift }) => {
      let value = 0
      let scale = 1 / base
      for (let n = index + 1; n > 0; n = Math.floor(n / base)) {
        value += digits[n % base]! * scale
        scale /= base
      }
      return (value + shift) % 1
    })
}
