/** Older files, brought up step by step: each step knows only its own version and the next. */
import { type Fault, fault, shown } from './fault'
import { fromVersion0 } from './migrations/version-0'
import { asObject } from './references/view'

const CURRENT_VERSION = 1

type Document = Record<string, unknown>
/** A step leaves what it was given as it is and returns the next version, telling what it had to assume. */
export type Step = (document: Document, note: (text: string) => void) => Document

const STEPS: Record<number, Step> = { 0: fromVersion0 }

export type Migrated = { ok: true; document: unknown; notes: string[] } | { ok: false; faults: Fault[] }

/** The document in the current version, or why it cannot be brought there. */
export function migrate(root: unknown): Migrated {
  const faults = headFaults(root)
  if (faults.length) return { ok: false, faults }
  let document = root as Document
  const notes: string[] = []
  for (let v = Number(document.version); v < CURRENT_VERSION; v++) {
    document = STEPS[v]!(document, (text) => notes.push(text))
    notes.push(`The file was of version ${v}; it was brought to version ${v + 1}.`)
  }
  return { ok: true, document, notes }
}

function headFaults(root: unknown): Fault[] {
  if (typeof root !== 'object' || root === null || Array.isArray(root)) {
    return [fault([], `a plan is an object with named fields; this is ${shown(root)}`)]
  }
  const { format, version } = asObject(root)
  if (format !== 'fallroom-plan') {
    return [fault(['format'], `must be "fallroom-plan", is ${shown(format)}: this is no plan file`)]
  }
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
    return [fault(['version'], `must be ${CURRENT_VERSION}, is ${shown(version)}`)]
  }
  if (version > CURRENT_VERSION) {
    const newer = `the file is of version ${version}; this program reads up to version ${CURRENT_VERSION}`
    return [fault(['version'], `${newer}. It was written by a newer program and is left alone`)]
  }
  return []
}
