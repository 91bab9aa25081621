/** The sample plans, for tests and benches. */
import { readFileSync } from 'node:fs'
import { readPlan } from '../../src/plan/read'
import type { Plan } from '../../src/plan/types'

/** `samples/NAME.plan.json`, read anew each time, so that whoever asks may change it. */
export function sample(name: string): Plan {
  const read = readPlan(readFileSync(new URL(`../../samples/${name}.plan.json`, import.meta.url), 'utf8'))
  if (!read.ok) throw new Error(read.faults.map((f) => `${f.path}: ${f.message}`).join('; '))
  return read.plan
}
