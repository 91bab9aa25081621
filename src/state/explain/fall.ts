/** A fall taken apart: the stack of distances of mechanics section 4, and the room above an obstacle. */
import type { Plan } from '../../plan/types'
import type { Fall, Finding, Results } from '../../study/results'
import type { Explanation, ExplanationRow } from './types'

const m = (label: string, value: number | null, total = false): ExplanationRow => ({
  label,
  value,
  unit: 'm',
  total,
})

export function methodWords(fall: Fall): string {
  const how = fall.method === 'energy' ? 'Energy method' : 'Fall in time'
  const rope = fall.grip === 'held' ? 'rope held at the stanchions' : 'rope sliding at the stanchions'
  return `${how}, span ${fall.span + 1}, ${rope}, ${fall.line} line, ${fall.connector} connector, ${fall.workers === 1 ? 'one worker' : `${fall.workers} workers`}`
}

/** The falls that count for a line: at its own grip, of one worker where one is meant. */
function fallsOf(plan: Plan, results: Results, lineId: string | null | undefined, worker?: string): Fall[] {
  const line = plan.lines.find((l) => l.id === lineId)
  const falls = results.lines.find((l) => l.id === lineId)?.falls ?? []
  return falls.filter((f) => f.grip === (line?.grip ?? 'sliding') && (!worker || f.worker === worker))
}

const measure: Record<string, (f: Fall) => number | null> = {
  'free-fall': (f) => f.freeFall,
  'arrest-force': (f) => f.arrestForce,
  deceleration: (f) => f.connectorExtension,
  'connector-runs-out': (f) => f.connectorTorn ?? f.connectorExtension,
  'absorber-runs-out': (f) => f.absorberExtension,
}

export function greatest(falls: readonly Fall[], of: (f: Fall) => number | null): Fall | null {
  let best: Fall | null = null
  for (const fall of falls) if ((of(fall) ?? -1) > (best ? (of(best) ?? -1) : -1)) best = fall
  return best
}

export function explainFall(plan: Plan, results: Results, finding: Finding): Explanation | null {
  const worker = plan.workers.find((w) => w.id === finding.subject)
  const fall = greatest(
    fallsOf(plan, results, worker?.line ?? finding.subject, worker?.id),
    measure[finding.rule] ?? ((f) => f.clearance),
  )
  return fall ? stack(plan, fall) : null
}

/** The clearance as a sum, with the force that goes with it. */
export function stack(plan: Plan, fall: Fall): Explanation {
  const worker = plan.workers.find((w) => w.id === fall.worker)
  const rows = [
    m('free fall h', fall.freeFall),
    m('line drop d', fall.lineDrop),
    m('connector extension e', fall.connectorExtension),
    m('harness stretch', worker?.harnessStretch ?? null),
    m('total fall', fall.totalFall, true),
    m('margin below', plan.basis.marginBelow),
    m('clearance needed below the walking surface', fall.clearance, true),
  ]
  const forces = [
    { label: 'arrest force on one body', value: fall.arrestForce, unit: 'N' },
    { label: 'greatest tension in the wire rope', value: fall.tension, unit: 'N' },
    m('line absorber extension', fall.absorberExtension),
  ]
  return {
    title: 'The stack',
    formula: 'total fall = h + d + e + harness stretch',
    rows,
    method: `${methodWords(fall)}, ${worker?.name ?? fall.worker}.`,
    parts: [
      {
        title: 'Forces in this fall',
        rows: forces,
        formula: 'n m g (h + d + e) = U(P) + n (F² / 2k + Fp x)',
      },
    ],
  }
}

export function explainGap(plan: Plan, results: Results, finding: Finding): Explanation | null {
  const gap = results.obstacles.find((o) => o.id === finding.subject)
  if (!gap || gap.gap === null) return null
  const line = results.lines.find((l) => l.id === gap.line)
  const obstacle = plan.obstacles.find((o) => o.id === finding.subject)
  const here = line?.floor.reduce<(typeof line.floor)[number] | null>(
    (best, p) =>
      best && Math.abs(best.station - (gap.station ?? 0)) <= Math.abs(p.station - (gap.station ?? 0))
        ? best
        : p,
    null,
  )
  const rows = [
    ...(here
      ? [m('depth of the room below the girder top', here.depth), m('more by the fall in time', here.excess)]
      : []),
    m('margin of the obstacle itself', obstacle?.margin ?? 0),
    m(gap.gap < 0 ? 'the room enters it by' : 'left above it', Math.abs(gap.gap), true),
  ]
  const worst = greatest(fallsOf(plan, results, gap.line), (f) =>
    f.method === 'energy' ? f.clearance : null,
  )
  const parts = worst ? [{ ...stack(plan, worst), title: 'The deepest fall of this line' }] : []
  return { title: 'The room', rows, parts }
}
