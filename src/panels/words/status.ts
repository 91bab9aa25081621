/** The status words and how a thing's name is told, the same everywhere. */
import type { Plan } from '../../plan/types'
import { type Ref, resolveRef } from '../../state/refs'
import type { FindingStatus } from '../../study/results'

export const statusWord: Record<FindingStatus, string> = {
  fail: 'fails',
  warn: 'look here',
  pass: 'holds',
  unknown: 'not known',
}

/** Worst first. */
export const statusOrder: FindingStatus[] = ['fail', 'warn', 'unknown', 'pass']

/** What a thing is called: its name where it has one, else its id. */
export function refName(plan: Plan, ref: Ref): string {
  // These have no other name; a list of hundreds of findings need not look for each.
  if (ref.kind === 'stanchion' || ref.kind === 'tie-back') return ref.id
  const found = resolveRef(plan, ref)
  if (!found) return ref.id
  switch (found.kind) {
    case 'girder':
      return found.girder.name || ref.id
    case 'loop-row':
      return `Loop row ${ref.id}`
    case 'deck':
      return found.deck.name || ref.id
    case 'line':
      return found.line.name || ref.id
    case 'stanchion':
    case 'tie-back':
      return ref.id
    case 'worker':
      return found.worker.name || ref.id
    case 'obstacle':
      return found.obstacle.name || ref.id
  }
}

export const kindWord: Record<Ref['kind'], string> = {
  girder: 'girder',
  'loop-row': 'loop row',
  deck: 'deck',
  line: 'line',
  stanchion: 'stanchion',
  'tie-back': 'tie-back',
  worker: 'worker',
  obstacle: 'obstacle',
  part: 'part',
}
