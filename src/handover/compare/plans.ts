/** What differs between two plans, thing by thing: added, removed, moved or changed. Records are history and not compared. */
import { planHash } from '../../plan/hash'
import { partFields } from '../../plan/part-list/fields'
import type { Girder, Line, Part, Plan } from '../../plan/types'
import { type FieldChange, fieldChanges } from './fields'

export type ThingKind =
  | 'plan'
  | 'limits'
  | 'girder'
  | 'loop-row'
  | 'deck'
  | 'line'
  | 'stanchion'
  | 'tie-back'
  | 'worker'
  | 'obstacle'
  | 'part'

export interface Change {
  what: ThingKind
  id: string
  name: string
  /** Line or girder that it belongs to. */
  of: string | null
  how: 'added' | 'removed' | 'changed'
  fields: FieldChange[]
}

interface Thing {
  id: string
  name?: string
}

/** One list against another by id, in the order of the later one, what is gone last. */
function listChanges<T extends Thing>(
  what: ThingKind,
  before: readonly T[],
  after: readonly T[],
  of: string | null,
  skip: ReadonlySet<string> = new Set(),
): Change[] {
  const change = (thing: T, how: Change['how'], fields: FieldChange[]): Change => ({
    what,
    id: thing.id,
    name: thing.name ?? thing.id,
    of,
    how,
    fields,
  })
  const old = new Map(before.map((t) => [t.id, t]))
  const kept = after.flatMap((t) => {
    const was = old.get(t.id)
    if (!was) return [change(t, 'added', [])]
    const fields = fieldChanges(was, t, skip)
    return fields.length > 0 ? [change(t, 'changed', fields)] : []
  })
  const now = new Set(after.map((t) => t.id))
  return [...kept, ...before.filter((t) => !now.has(t.id)).map((t) => change(t, 'removed', []))]
}

const insideLine = new Set(['stanchions', 'tieBacks'])
const insideGirder = new Set(['loops'])
const ownLists = new Set(['girders', 'decks', 'lines', 'workers', 'obstacles', 'parts', 'records', 'basis'])

/** Every difference, from the plan as a whole down to its parts. */
export function planChanges(before: Plan, after: Plan): Change[] {
  const whole = fieldChanges(before, after, ownLists)
  const limits = fieldChanges(before.basis, after.basis)
  const one = (what: ThingKind, name: string, fields: FieldChange[]): Change[] =>
    fields.length > 0 ? [{ what, id: what, name, of: null, how: 'changed', fields }] : []
  return [
    ...one('plan', after.title, whole),
    ...one('limits', 'Limits and margins', limits),
    ...listChanges('girder', before.girders, after.girders, null, insideGirder),
    ...pairs(before.girders, after.girders).flatMap(([a, b]) => rowChanges(a, b)),
    ...listChanges('deck', before.decks ?? [], after.decks ?? [], null),
    ...listChanges('line', before.lines, after.lines, null, insideLine),
    ...pairs(before.lines, after.lines).flatMap(([a, b]) => insideOfLine(a, b)),
    ...listChanges('worker', before.workers, after.workers, null),
    ...listChanges('obstacle', before.obstacles, after.obstacles, null),
    ...listChanges('part', before.parts, after.parts, null).map((c) => inPartUnits(c, after.parts)),
  ]
}

/** The same name has another unit in another kind of part, as a stiffness has: the kind says which. */
function inPartUnits(change: Change, parts: readonly Part[]): Change {
  const kind = parts.find((p) => p.id === change.id)?.kind
  const known = kind ? partFields[kind] : []
  const unitOf = ({ field, unit }: FieldChange): string | null =>
    known.find((f) => f.key === field || f.key.startsWith(`${field}.`))?.unit ?? unit
  return { ...change, fields: change.fields.map((f) => ({ ...f, unit: unitOf(f) })) }
}

const pairs = <T extends Thing>(before: readonly T[], after: readonly T[]): [T, T][] =>
  after.flatMap((b): [T, T][] => {
    const a = before.find((t) => t.id === b.id)
    return a ? [[a, b]] : []
  })

const rowChanges = (a: Girder, b: Girder): Change[] => listChanges('loop-row', a.loops, b.loops, b.id)

const insideOfLine = (a: Line, b: Line): Change[] => [
  ...listChanges('stanchion', a.stanchions, b.stanchions, b.id),
  ...listChanges('tie-back', a.tieBacks, b.tieBacks, b.id),
]

/** Whether both plans would give the same numbers: their hashes leave records out. */
export const samePlan = (before: Plan, after: Plan): boolean => planHash(before) === planHash(after)
