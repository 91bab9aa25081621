/** Which of two passing layouts is the better one, in the order a person chose. */
import type { Aim, Candidate } from './types'

/** Figures nearer than this count as equal: 5 mm of clearance, half a percent of tension. */
const CLEARANCE_STEP = 0.005
const TENSION_STEP = 0.005

const worst = Number.POSITIVE_INFINITY

/** Less than zero: a is better by this aim. */
function byAim(a: Candidate, b: Candidate, aim: Aim): number {
  if (aim === 'parts') return a.parts - b.parts
  if (aim === 'clearance') {
    const apart = (a.clearance ?? worst) - (b.clearance ?? worst)
    return Math.abs(apart) < CLEARANCE_STEP ? 0 : apart
  }
  const apart = (a.tension ?? worst) - (b.tension ?? worst)
  return Math.abs(apart) < TENSION_STEP * (b.tension ?? worst) ? 0 : apart
}

/** Fewer stanchions first, then the aims in their order. */
export function better(a: Candidate, b: Candidate, aims: Aim[]): boolean {
  if (a.stanchions !== b.stanchions) return a.stanchions < b.stanchions
  for (const aim of aims) {
    const apart = byAim(a, b, aim)
    if (apart !== 0) return apart < 0
  }
  return false
}

/** The cost of a span (see case.ts) from which on no layout of the same parts can be better than a passing one. */
export function closeTo(found: Candidate, aims: Aim[]): number {
  const first = aims.find((a) => a !== 'parts') ?? 'clearance'
  if (first === 'tension') return (found.tension ?? worst) * (1 - TENSION_STEP)
  return (found.clearance ?? worst) - CLEARANCE_STEP
}
