import type { Vec3 } from '../plan/types'

/** A model file as read: loose triangles in the file's own units and axes. Named as the format names them: soup. */
export interface TriangleSoup {
  /** Three corners of three coordinates for each triangle. */
  triangles: Float32Array
  low: Vec3
  high: Vec3
  /** What a person should know before trusting it, in plain words. */
  notes: string[]
  /** What the format itself says; a person may know better. */
  upAxis: 'y' | 'z'
  /** Metres for one unit of the file, as far as the format says; null where it does not. */
  metresPerUnit: number | null
  /** sha256 of the file's bytes, hexadecimal. */
  hash: string
}

export type ModelRead = { ok: true; value: TriangleSoup } | { ok: false; why: string }

export const unread = (why: string): { ok: false; why: string } => ({ ok: false, why })

/** What a loader threw, in words for a person: a slip inside the loader itself says nothing about the file. */
export function damaged(error: unknown): string {
  const told = error instanceof Error && !(error instanceof TypeError || error instanceof RangeError)
  return told ? `is damaged: ${error.message}` : 'is damaged: it cannot be read to its end'
}

/** What a reader gets out of a file, before it is looked over. */
export interface RawModel {
  triangles: Float32Array
  upAxis: 'y' | 'z'
  metresPerUnit: number | null
  notes?: string[]
}

export type RawRead = { ok: true; value: RawModel } | { ok: false; why: string }

/** Where the IFC reader finds its engine: the address of web-ifc.wasm in a window, nothing in Node. */
export interface ReadOptions {
  ifcEngine?: string
  progress?: (share: number, what: string) => void
}
