/** Plots of spread and exploration, made with the drawings' own plot. */
import { plot } from '../../drawings/plot'
import type { SvgElement } from '../../drawings/svg'
import { formatQuantity, type UnitSystem } from '../../plan/units'
import type { ExplorePoint } from '../../study/explore/explore'
import type { Distribution } from '../../study/spread/types'

const WIDTH = 400
const HEIGHT = 220

/** Counts as steps, with the corner result marked. */
export function histogram(name: string, unit: string, of: Distribution, units: UnitSystem): SvgElement {
  const points = of.bins.flatMap((b): [number, number][] => [
    [b.from, b.count],
    [b.to, b.count],
  ])
  const most = Math.max(...of.bins.map((b) => b.count), 1)
  const corner = of.corner
  const lines = [{ name: 'Samples', points }]
  const marked =
    corner === null
      ? []
      : [
          {
            name: 'Corner',
            dash: [4, 3] as [number, number],
            points: [
              [corner, 0],
              [corner, most],
            ] as [number, number][],
          },
        ]
  const format = (v: number): string => formatQuantity(v, unit, units)
  return plot(
    {
      title: name,
      x: { label: name, unit: '', format },
      y: { label: 'Samples', unit: '' },
      lines: [...lines, ...marked],
    },
    WIDTH,
    HEIGHT,
  ).picture
}

/** The margin along one axis; below 0 a rule fails. */
export function marginPlot(
  label: string,
  unit: string,
  points: ExplorePoint[],
  units: UnitSystem,
): SvgElement {
  const known = points.flatMap((p): [number, number][] => (p.margin === null ? [] : [[p.x, 100 * p.margin]]))
  return plot(
    {
      title: `Least margin by ${label}`,
      x: { label, unit: '', format: (v) => formatQuantity(v, unit, units) },
      y: { label: 'Least margin, % of its limit', unit: '' },
      lines: [{ name: 'Least margin', points: known }],
      limits: [{ value: 0, text: 'fails below' }],
    },
    640,
    260,
  ).picture
}
