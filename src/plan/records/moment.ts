const DAY = 24 * 3600 * 1000

/**
 * Milliseconds since 1970 of a record's date and time. A date alone is its midnight, and a time without a zone is taken
 * as UTC, so that the same file says the same everywhere. NaN where it is no date.
 */
export function momentOf(at: string): number {
  const zoned = /^\d{4}-\d{2}-\d{2}$|(Z|[+-]\d{2}:?\d{2})$/i.test(at)
  return Date.parse(zoned ? at : `${at}Z`)
}

/** The moment one day after another, ISO 8601 in UTC; null where the first is no date. */
export function dayAfter(at: string): string | null {
  const time = momentOf(at)
  return Number.isFinite(time) ? new Date(time + DAY).toISOString() : null
}
