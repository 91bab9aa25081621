/** One fall as the study keeps it, whichever method computed it: its entry in the results, and what it pulls on. */
import type { Corner as FactCorner } from '../rules/context'
import type { HeadPull } from '../solver/heads'
import type { FallCase } from './energy-falls'
import type { Fall } from './results'

export interface StudiedFall {
  fall: Fall
  /** Pull on every head, N; null where the fall is not known. By the time method these are peaks. */
  heads: HeadPull[] | null
  /** Why the figures are null; null where they are not. */
  why: string | null
}

/** The same fall as rules name it. */
export const factCorner = (f: Fall): FactCorner => ({
  method: f.method,
  grip: f.grip,
  line: f.line,
  connector: f.connector,
  span: f.span,
  worker: f.worker,
})

/** The empty entry of a fall that could not be computed. */
export function unknownFall(
  head: Pick<Fall, 'method' | 'grip' | 'line' | 'connector' | 'span' | 'station' | 'worker' | 'workers'>,
  why: string,
): Fall {
  return {
    ...head,
    freeFall: null,
    arrestForce: null,
    connectorExtension: null,
    lineDrop: null,
    tension: null,
    absorberExtension: null,
    totalFall: null,
    clearance: null,
    note: why,
  }
}

/** total fall = h + d + e + harnessStretch; clearance = total fall + marginBelow, below the walking surface, m. */
export function studiedEnergyFall(c: FallCase, marginBelow: number): StudiedFall {
  const head = {
    method: 'energy' as const,
    ...c.corner,
    span: c.span,
    station: c.station,
    worker: c.worker.id,
    workers: c.count,
  }
  if (!c.fall.ok || c.freeFall === null) {
    const why = c.fall.ok ? 'the height of the rope is not known' : c.fall.why
    return { fall: unknownFall(head, why), heads: null, why }
  }
  const e = c.fall.value
  const totalFall = c.freeFall + e.drop + e.extension + c.worker.harnessStretch
  const fall: Fall = {
    ...head,
    freeFall: c.freeFall,
    arrestForce: e.arrestForce,
    connectorExtension: e.extension,
    lineDrop: e.drop,
    tension: e.tension,
    absorberExtension: e.state?.absorberExtension ?? 0,
    totalFall,
    clearance: totalFall + marginBelow,
    connectorTorn: e.torn,
    ...(e.ranOut ? { note: 'the connector has torn to its end' } : {}),
  }
  return { fall, heads: c.heads, why: null }
}
