/**
 * The connector in time: a spring k on the body, a plateau at which it tears for good, then k again (mechanics
 * sections 4 and 5). A slack connector never pushes; it unloads along k.
 */
import type { ConnectorLaw } from '../model'

export interface ConnectorState {
  law: ConnectorLaw
  /** Length at which it is taut before anything has torn, m. */
  length: number
  torn: number
  /** N */
  force: number
  /** Elastic and torn together, m; negative where slack. */
  extension: number
  /** J */
  lost: number
  ranOut: boolean
}

export const freshConnector = (law: ConnectorLaw, length: number): ConnectorState => ({
  law,
  length,
  torn: 0,
  force: 0,
  extension: 0,
  lost: 0,
  ranOut: false,
})

/** Force at the distance between its ends, N; tears it as far as that asks for. */
export function pullConnector(c: ConnectorState, distance: number): number {
  const { stiffness: k, plateau, maxExtension } = c.law
  c.extension = distance - c.length
  let force = k * (c.extension - c.torn)
  if (force > plateau && c.torn < maxExtension) {
    const torn = Math.min(c.extension - plateau / k, maxExtension)
    c.lost += plateau * (torn - c.torn)
    c.torn = torn
    force = k * (c.extension - torn)
  }
  if (c.torn >= maxExtension && force > plateau) c.ranOut = true
  c.force = Math.max(force, 0)
  return c.force
}

/** J stored at the distance between its ends; what it is about to tear counts as work done. */
export function connectorEnergy(c: ConnectorState, distance: number): number {
  const { stiffness: k, plateau, maxExtension } = c.law
  const stretch = distance - c.length - c.torn
  if (stretch <= 0) return 0
  const tearing = c.torn < maxExtension ? Math.max(0, stretch - plateau / k) : 0
  return (k * (stretch - tearing) ** 2) / 2 + plateau * tearing
}
