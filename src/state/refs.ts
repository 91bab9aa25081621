/** A reference to one thing in the plan, as selection, hover, findings, scene and tape share it. */
import type { Deck, Girder, Line, LoopRow, Obstacle, Plan, Stanchion, TieBack, Worker } from '../plan/types'

export type RefKind =
  | 'girder'
  | 'loop-row'
  | 'deck'
  | 'line'
  | 'stanchion'
  | 'tie-back'
  | 'worker'
  | 'obstacle'
  | 'part'

/** Ids are unique within a plan; the kind says in which list to look. */
export interface Ref {
  kind: RefKind
  id: string
  /** Of a tie-back: the one foot that is meant. */
  foot?: 'strap' | 'tensioner'
}

export const refKey = (ref: Ref): string => `${ref.kind}:${ref.id}${ref.foot ? `:${ref.foot}` : ''}`

export const sameRef = (a: Ref | null, b: Ref | null): boolean =>
  a === b || (a !== null && b !== null && refKey(a) === refKey(b))

export const hasRef = (list: readonly Ref[], ref: Ref): boolean => list.some((r) => sameRef(r, ref))

/** Whether some foot of it or the whole thing is in the list. */
export const touchesRef = (list: readonly Ref[], ref: Ref): boolean =>
  list.some((r) => r.kind === ref.kind && r.id === ref.id)

/** What a reference stands for, with its parent where it has one; null where the plan no longer has it. */
export type Found =
  | { kind: 'girder'; girder: Girder }
  | { kind: 'loop-row'; girder: Girder; row: LoopRow }
  | { kind: 'deck'; deck: Deck }
  | { kind: 'line'; line: Line }
  | { kind: 'stanchion'; line: Line; stanchion: Stanchion; index: number }
  | { kind: 'tie-back'; line: Line; tieBack: TieBack }
  | { kind: 'worker'; worker: Worker }
  | { kind: 'obstacle'; obstacle: Obstacle }

export function resolveRef(plan: Plan, ref: Ref): Found | null {
  switch (ref.kind) {
    case 'girder':
      return wrap(byId(plan.girders, ref.id), (girder) => ({ kind: 'girder', girder }))
    case 'deck':
      return wrap(byId(plan.decks ?? [], ref.id), (deck) => ({ kind: 'deck', deck }))
    case 'line':
      return wrap(byId(plan.lines, ref.id), (line) => ({ kind: 'line', line }))
    case 'worker':
      return wrap(byId(plan.workers, ref.id), (worker) => ({ kind: 'worker', worker }))
    case 'obstacle':
      return wrap(byId(plan.obstacles, ref.id), (obstacle) => ({ kind: 'obstacle', obstacle }))
    case 'loop-row':
      return inGirders(plan, ref.id)
    case 'stanchion':
    case 'tie-back':
      return inLines(plan, ref)
    case 'part':
      return null
  }
}

const byId = <T extends { id: string }>(list: readonly T[], id: string): T | undefined =>
  list.find((item) => item.id === id)

const wrap = <T>(item: T | undefined, make: (item: T) => Found): Found | null => (item ? make(item) : null)

function inGirders(plan: Plan, id: string): Found | null {
  for (const girder of plan.girders) {
    const row = byId(girder.loops, id)
    if (row) return { kind: 'loop-row', girder, row }
  }
  return null
}

function inLines(plan: Plan, ref: Ref): Found | null {
  for (const line of plan.lines) {
    const index = line.stanchions.findIndex((s) => s.id === ref.id)
    const stanchion = line.stanchions[index]
    if (ref.kind === 'stanchion' && stanchion) return { kind: 'stanchion', line, stanchion, index }
    const tieBack = byId(line.tieBacks, ref.id)
    if (ref.kind === 'tie-back' && tieBack) return { kind: 'tie-back', line, tieBack }
  }
  return null
}

/** The line that a thing belongs to, for the tape and the findings; null where it belongs to none. */
export function lineOfRef(plan: Plan, ref: Ref): Line | null {
  const found = resolveRef(plan, ref)
  if (!found) return null
  if (found.kind === 'line' || found.kind === 'stanchion' || found.kind === 'tie-back') return found.line
  if (found.kind === 'worker') return plan.lines.find((l) => l.id === found.worker.line) ?? null
  if (found.kind === 'girder') return plan.lines.find((l) => l.girder === found.girder.id) ?? null
  return null
}

/** The reference for a bare id, such as a finding's subject; null for ids that the plan does not have. */
export const refOfId = (plan: Plan, id: string): Ref | null => refsOf(plan).get(id) ?? null

const refs = new WeakMap<Plan, ReadonlyMap<string, Ref>>()

/** Of everything in a plan, by id; looked through once for each plan, since a list of findings asks for all of them. */
function refsOf(plan: Plan): ReadonlyMap<string, Ref> {
  const known = refs.get(plan) ?? new Map(everyRef(plan).map((ref) => [ref.id, ref]))
  refs.set(plan, known)
  return known
}

function everyRef({ lines, workers, obstacles, girders, decks = [], parts }: Plan): Ref[] {
  const all = (kind: RefKind, list: readonly { id: string }[]): Ref[] => list.map(({ id }) => ({ kind, id }))
  return [
    ...all('part', parts),
    ...all('deck', decks),
    ...girders.flatMap((g) => all('loop-row', g.loops)),
    ...all('girder', girders),
    ...all('obstacle', obstacles),
    ...all('worker', workers),
    ...all('line', lines),
    ...lines.flatMap((l) => [...all('tie-back', l.tieBacks), ...all('stanchion', l.stanchions)]),
  ]
}
