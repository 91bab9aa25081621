/** The limits as a list to read and change. */
import type { Basis } from '../../plan/types'
import { figureOf, withFigure } from '../parts/part-fields'

export interface BasisFigure {
  key: string
  /** The limit's name in the basis: of both ends of a range the same. */
  of: string
  label: string
  unit: string
  value: number
  least: number
  most: number
}

type Row = [key: string, label: string, unit: string, least: number, most: number]

const rows: Row[] = [
  ['safetyFactor', 'Strength over demand', 'ratio', 1, 20],
  ['maxArrestForce', 'Arrest force on one body, at most', 'N', 1000, 20000],
  ['maxFreeFall', 'Free fall, at most', 'm', 0.1, 10],
  ['maxDeceleration', 'Deceleration distance, at most', 'm', 0.1, 10],
  ['marginBelow', 'Kept free below the body', 'm', 0, 10],
  ['marginSide', 'Kept free beside the body', 'm', 0, 10],
  ['bodyRadius', 'Half-width of a hanging body', 'm', 0.05, 2],
  ['minTieBackAngle', 'Tie-back from the vertical, at least', 'deg', 0, 89],
  ['minLoopsEngaged', 'Loops on the bracket, at least', 'count', 0, 100],
  ['minLoopsBeside', 'Loops on either side, at least', 'count', 0, 100],
  ['minBarDiameter', 'Bar of the loops, at least', 'm', 0.001, 0.1],
  ['boltEdge', 'Bolt to an edge without a plate, at least', 'm', 0, 2],
  ['plateThickness', 'Thickness of that plate', 'm', 0.001, 0.2],
  ['eyeOffset.low', 'Eye to its stanchion, at least', 'm', 0, 20],
  ['eyeOffset.high', 'Eye to its stanchion, at most', 'm', 0, 20],
  ['maxSlope', 'Slope of the line, at most', 'deg', 0, 90],
  ['maxSpan', 'Span between stanchions, at most', 'm', 0.5, 100],
]

export function basisFigures(basis: Basis): BasisFigure[] {
  return rows.flatMap(([key, label, unit, least, most]) => {
    const value = figureOf(basis as never, key)
    return value === undefined ? [] : [{ key, of: key.split('.')[0] ?? key, label, unit, value, least, most }]
  })
}

/** Changes one limit of a draft; from then on the basis is the plan's own. */
export function setLimit(basis: Basis, key: string, value: number): void {
  Object.assign(basis, withFigure({ ...basis }, key, value), { name: 'custom' })
}
