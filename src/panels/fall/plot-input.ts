/** From a computed fall to what its plots are drawn from. */
import { type FallPlotInput, type FallPlotKind, fallPlot } from '../../drawings/fall-plots'
import type { PlotInput } from '../../drawings/plot'
import { formatForce, formatLength, formatQuantity } from '../../plan/units'
import type { Dropped } from '../../state/fall/fall-store'
import { shownMoments, timelineOf, valueAt } from '../../state/fall/timeline'
import type { UnitSystem } from '../../state/window-state'

export const plotKinds: { kind: FallPlotKind; name: string }[] = [
  { kind: 'tension', name: 'Tension' },
  { kind: 'force', name: 'Arrest force' },
  { kind: 'height', name: 'D-ring' },
  { kind: 'energy', name: 'Energy' },
]

export function plotOf(kind: FallPlotKind, { study, series, plan }: Dropped, units: UnitSystem): PlotInput {
  const line = timelineOf(study)
  const input: FallPlotInput = {
    series,
    names: study.workers.length > 1 ? study.workers.map((w) => w.name) : [''],
    from: line?.from ?? 0,
    to: line?.to ?? 1,
    lowest: shownMoments(study, line?.to ?? 0).filter((m) => m.what === 'lowest'),
    maxArrestForce: plan.basis.maxArrestForce,
    ropeStrength: study.ropeStrength,
    units,
  }
  return fallPlot(kind, input)
}

/** What a plot reads at a frame, with its unit; of several bodies the one in hand. */
export function readAt(
  kind: FallPlotKind,
  { series }: Dropped,
  frame: number,
  body: number,
  units: UnitSystem,
): string {
  switch (kind) {
    case 'tension':
      return formatForce(valueAt(series.tension, frame), units)
    case 'force':
      return formatForce(valueAt(series.force[body] ?? series.force[0]!, frame), units)
    case 'height':
      return formatLength(valueAt(series.height[body] ?? series.height[0]!, frame), units)
    case 'energy':
      return `lost ${formatQuantity(valueAt(series.energies.lost, frame), 'J', units)}`
  }
}
