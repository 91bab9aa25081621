import type { Fault } from '../fault'
import { doubleIds } from './ids'
import { lineFaults, wrongKind } from './lines'
import { siteFaults } from './site'
import { type PlanView, viewOf } from './view'

/** Everything wrong with how the pieces of a document hang together, wherever the pieces themselves could be read. */
export function referenceFaults(root: unknown): Fault[] {
  const view = viewOf(root)
  return [...doubleIds(root), ...siteFaults(view), ...lineFaults(view), ...workerFaults(view)]
}

function workerFaults(view: PlanView): Fault[] {
  return view.workers.flatMap(({ item, path }) => [
    ...wrongKind(view, item.line, 'line', [...path, 'line']),
    ...wrongKind(view, item.connector, 'connector', [...path, 'connector']),
  ])
}
