/** How often a figure came out where in a spread, with the corner that the findings use marked. */
import { formatQuantity, type UnitSystem } from '../plan/units'
import type { Distribution } from '../study/spread/types'
import { plot } from './plot'
import type { SvgElement } from './svg'
import type { Theme } from './theme'

export interface SpreadPlotInput {
  name: string
  /** A unit that `formatQuantity` knows. */
  unit: string
  of: Distribution
  units: UnitSystem
}

/** Counts as steps, low to high; the corner as a dashed line where one could be computed. */
export function spreadPlot(input: SpreadPlotInput, width: number, height: number, theme: Theme): SvgElement {
  const { name, unit, of, units } = input
  const steps = of.bins.flatMap((b): [number, number][] => [
    [b.from, b.count],
    [b.to, b.count],
  ])
  const most = Math.max(...of.bins.map((b) => b.count), 1)
  const corner: [number, number][] =
    of.corner === null
      ? []
      : [
          [of.corner, 0],
          [of.corner, most],
        ]
  const lines = [
    { name: 'Samples', points: steps },
    ...(corner.length > 0
      ? [{ name: 'Worst corner', points: corner, dash: [4, 3] as [number, number] }]
      : []),
  ]
  const format = (v: number): string => formatQuantity(v, unit, units)
  const x = { label: name, unit: '', format }
  return plot({ title: name, x, y: { label: 'Samples', unit: '' }, lines }, width, height, theme).picture
}
