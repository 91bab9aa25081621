/** The plot of exploration, made with the drawings' own plot. */
import { plot } from '../../drawings/plot'
import type { SvgElement } from '../../drawings/svg'
import { formatQuantity, type UnitSystem } from '../../plan/units'
import type { ExplorePoint } from '../../study/explore/explore'

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
