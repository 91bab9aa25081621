/**
 * What a check against an outside reference got. Tests write one line a case into reports/proof.jsonl; a script makes
 * the README's table of it.
 */
import { appendFileSync, mkdirSync } from 'node:fs'
import { expectClose } from './close'

export interface ProofCase {
  /** What was computed. */
  what: string
  /** Where the expected value stands. */
  source: string
  expected: number
  got: number
  unit: string
  rel?: number
  abs?: number
}

/** Holds a value against its reference and keeps the line for the README's table. */
export function prove(c: ProofCase): void {
  mkdirSync('reports', { recursive: true })
  appendFileSync('reports/proof.jsonl', `${JSON.stringify(c)}\n`)
  expectClose(
    c.got,
    c.expected,
    { ...(c.rel === undefined ? {} : { rel: c.rel }), ...(c.abs === undefined ? {} : { abs: c.abs }) },
    c.what,
  )
}
