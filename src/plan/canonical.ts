/** JSON with sorted keys and no spaces: the same document gives the same text whatever order its fields had. */

/** Throws where a number is not finite, for such a plan must be neither saved nor hashed. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((v) => canonical(v ?? null)).join(',')}]`
  if (typeof value === 'object' && value !== null) {
    const fields = Object.entries(value)
      .filter(([, v]) => v !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
    return `{${fields.map(([k, v]) => `${JSON.stringify(k)}:${canonical(v)}`).join(',')}}`
  }
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new Error('a number of the plan is not finite')
  return JSON.stringify(value)
}
