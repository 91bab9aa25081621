import { expect } from 'vitest'

/** Two-sided closeness: |got - want| <= max(rel |want|, abs). Fails on NaN, null and undefined. */
export function expectClose(
  got: number | null | undefined,
  want: number,
  tolerance: { rel?: number; abs?: number },
  what = '',
): void {
  const limit = Math.max((tolerance.rel ?? 0) * Math.abs(want), tolerance.abs ?? 0)
  const off = typeof got === 'number' ? Math.abs(got - want) : Number.NaN
  expect(off <= limit, `${what} got ${got}, wanted ${want} +- ${limit}`).toBe(true)
}

/** Fails with the reason where something did not converge. */
export function solvedValue<T>(solved: { ok: true; value: T } | { ok: false; why: string }): T {
  if (!solved.ok) throw new Error(`did not converge: ${solved.why}`)
  return solved.value
}
