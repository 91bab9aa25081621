import { readFileSync } from 'node:fs'
import { type Fault, readPlan } from '../../src/plan/read'
import type { Plan } from '../../src/plan/types'

export const SAMPLES = ['thin-margins', 'much-to-put-right', 'four-girder-bay'] as const

export function sampleText(name: (typeof SAMPLES)[number]): string {
  return readFileSync(new URL(`../../samples/${name}.plan.json`, import.meta.url), 'utf8')
}

/** A fresh copy of a sample, as loose as a hand-written file. */
export function sample(name: (typeof SAMPLES)[number] = 'thin-margins'): Plan {
  const read = readPlan(sampleText(name))
  if (!read.ok) throw new Error(JSON.stringify(read.faults))
  return read.plan
}

// biome-ignore lint/suspicious/noExplicitAny: tests break plans in ways that the types forbid
export type Loose = any

/** The faults of a sample after it was spoilt. */
export function faultsAfter(
  spoil: (plan: Loose) => void,
  name: (typeof SAMPLES)[number] = 'thin-margins',
): Fault[] {
  const plan = structuredClone(sample(name)) as Loose
  spoil(plan)
  const read = readPlan(JSON.stringify(plan))
  return read.ok ? [] : read.faults
}
