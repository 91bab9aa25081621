/** The tension to expect on the indicator at other temperatures (mechanics sections 2 and 9). */
import type { Range } from '../plan/types'

export interface TensionAt {
  /** degC */
  temperature: number
  /** N; null where the line could not be solved there. */
  tension: number | null
}

/**
 * Rows from the coldest to the warmest service temperature at even steps, with both ends and the install temperature
 * among them, coldest first. `tensionAt` gives the installed tension at a temperature, N, or null. The girder's own
 * expansion is ignored, and whoever prints the table says so.
 */
export function temperatureTable(
  service: Range,
  install: number,
  tensionAt: (temperature: number) => number | null,
  step = 10,
): TensionAt[] {
  return tableTemperatures(service, install, step).map((temperature) => {
    const tension = tensionAt(temperature)
    return { temperature, tension: Number.isFinite(tension) ? tension : null }
  })
}

function tableTemperatures(service: Range, install: number, step: number): number[] {
  const low = Math.min(service.low, install)
  const high = Math.max(service.high, install)
  if (!(step > 0) || !Number.isFinite(high - low)) return [install]
  const found = new Set([service.low, service.high, install])
  for (let i = Math.ceil(low / step); i * step <= high; i++) found.add(i * step)
  return [...found].sort((a, b) => a - b)
}
