import { type Fault, fault } from './fault'
import { readJson } from './json'
import { withLines } from './lines'
import { migrate } from './migrate'
import { planNotes } from './notes'
import { referenceFaults } from './references/check'
import { planSchema } from './schema/plan'
import { MOST_FAULTS, screen } from './screen'
import type { Plan } from './types'
import { schemaFaults } from './words'

export type { Fault } from './fault'

export type PlanRead = { ok: true; plan: Plan; notes: string[] } | { ok: false; faults: Fault[] }

/**
 * Reads the text of a plan file. Never throws: what is wrong comes back as faults, each with its path and plain words.
 * `notes` tell what was assumed or looks odd without being wrong. Fields that this version does not know are kept.
 */
export function readPlan(text: string): PlanRead {
  const json = readJson(text)
  if (!json.ok) return json
  const migrated = migrate(json.value)
  if (!migrated.ok) return migrated
  const faults = documentFaults(migrated.document)
  if (faults.length) return { ok: false, faults: withLines(limited(faults), text) }
  const plan = migrated.document as Plan
  return { ok: true, plan, notes: [...migrated.notes, ...planNotes(plan)] }
}

/** Faults of a plan in memory, before it is saved or computed: the same checks as for one from a file. */
export function planFaults(plan: Plan): Fault[] {
  const faults = screen(plan)
  return faults.length ? faults : limited(documentFaults(plan))
}

/** Why a valid plan cannot be checked yet. Empty: it can. The window may begin from a plan without lines. */
export function checkable(plan: Plan): Fault[] {
  return plan.lines.length === 0 ? [fault(['lines'], 'the plan has no lines: there is nothing to check')] : []
}

function documentFaults(document: unknown): Fault[] {
  const read = planSchema.safeParse(document)
  const shape = read.success ? [] : schemaFaults(read.error, document)
  const told = new Set(shape.map((f) => f.path))
  return [...shape, ...referenceFaults(document).filter((f) => !told.has(f.path))]
}

function limited(faults: Fault[]): Fault[] {
  if (faults.length <= MOST_FAULTS) return faults
  const rest = faults.length - MOST_FAULTS
  return [...faults.slice(0, MOST_FAULTS), fault([], `${rest} more faults are not listed`)]
}
