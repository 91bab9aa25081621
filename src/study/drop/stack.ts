import type { Plan } from '../../plan/types'
import type { Under } from './beneath'
import type { DroppedWorker } from './types'

/** The clearance of one dropped worker as its summands, m, beside what is there under the walking surface. */
export interface DropStack {
  freeFall: number
  lineDrop: number
  connectorExtension: number
  harnessStretch: number
  marginBelow: number
  /** What the fall in time needs more than the sum, m. */
  excess: number
  there: { name: string; distance: number } | null
}

const marginOf = (plan: Plan, under: Under): number =>
  plan.obstacles.find((o) => o.id === under.id)?.margin ?? 0

/** By the energy method, whose parts add up; what the time method needs more stands on top. Null where not known. */
export function stackOf(
  plan: Plan,
  dropped: Pick<DroppedWorker, 'drop' | 'energy' | 'dynamic'>,
  surface: number,
  under: Under | undefined,
): DropStack | null {
  const { energy, dynamic } = dropped
  const worker = plan.workers.find((w) => w.id === dropped.drop.worker)
  if (
    !worker ||
    energy?.clearance == null ||
    energy.freeFall === null ||
    energy.lineDrop === null ||
    energy.connectorExtension === null
  )
    return null
  return {
    freeFall: energy.freeFall,
    lineDrop: energy.lineDrop,
    connectorExtension: energy.connectorExtension,
    harnessStretch: worker.harnessStretch,
    marginBelow: plan.basis.marginBelow,
    excess: Math.max(0, (dynamic.clearance ?? 0) - energy.clearance),
    there: under ? { name: under.name, distance: surface - under.top - marginOf(plan, under) } : null,
  }
}
