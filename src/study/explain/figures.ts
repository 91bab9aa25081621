/** From the study's falls to the plain figures that the solver's explanations are made of. */
import type { Plan } from '../../plan/types'
import type { Corner } from '../../rules/context'
import type { FallFigures } from '../../solver/explain-fall'
import type { BesideCase, FallCase } from '../energy-falls'
import type { StationReach } from '../floor'
import type { LineStudy } from '../line-study'
import type { Fall } from '../results'
import type { StudiedFall } from '../studied-fall'

/** Whether a fall of the results is the one that a rule's corner names. */
const isCorner = (f: Fall, c: Corner): boolean =>
  f.method === c.method &&
  f.grip === c.grip &&
  f.line === c.line &&
  f.connector === c.connector &&
  f.span === c.span &&
  f.worker === c.worker

/** The studied fall of a corner; null where it is one beside a stanchion. */
export function fallOf(line: LineStudy, corner: Corner): StudiedFall | null {
  if (corner.beside !== undefined) return null
  const falls = corner.method === 'energy' ? line.falls.energy : line.falls.dynamic
  return falls.find((f) => isCorner(f.fall, corner)) ?? null
}

/** The solver's own case of an energy corner at mid-span. */
export const caseOf = (line: LineStudy, c: Corner): FallCase | null =>
  line.energyCases.find(
    (e) =>
      e.corner.grip === c.grip &&
      e.corner.line === c.line &&
      e.corner.connector === c.connector &&
      e.span === c.span &&
      e.worker.id === c.worker,
  ) ?? null

interface Who {
  worker: FallCase['worker']
  connector: FallCase['connector']
  end: 'low' | 'high'
  height: number
  freeFall: number
  count: number
}

function commonFigures(plan: Plan, w: Who) {
  return {
    type: w.connector.type,
    length: w.connector.length,
    dRingHeight: w.worker.dRingHeight,
    height: w.height,
    mass: w.worker.mass,
    workers: w.count,
    stiffness: w.connector.stiffness,
    plateau: w.connector.plateau[w.end],
    harnessStretch: w.worker.harnessStretch,
    marginBelow: plan.basis.marginBelow,
    freeFall: w.freeFall,
    sources: {
      connector: w.connector.source,
      margin: plan.basis.sources.marginBelow ?? 'source not given',
    },
  }
}

/** Figures of a fall at mid-span; null where it was not computed. */
export function figuresOf(plan: Plan, c: FallCase): FallFigures | null {
  if (!c.fall.ok || c.height === null || c.freeFall === null) return null
  const { drop, extension, torn, arrestForce, work } = c.fall.value
  const who = { ...c, end: c.corner.connector, height: c.height, freeFall: c.freeFall }
  return { ...commonFigures(plan, who), drop, extension, torn, arrestForce, work }
}

/** Figures of a fall beside a stanchion, where the line does not move. */
export function besideFigures(plan: Plan, c: BesideCase, height: number): FallFigures | null {
  if (!c.fall.ok) return null
  const { extension, torn, arrestForce } = c.fall.value
  return {
    ...commonFigures(plan, { ...c, height, count: 1 }),
    drop: 0,
    work: 0,
    extension,
    torn,
    arrestForce,
  }
}

/** Figures of a reach of the floor: the extension is split as the connector's law does. */
export function reachFigures(plan: Plan, r: StationReach, count: number): FallFigures {
  const { stiffness, plateau } = r.connector
  const elastic = plateau[r.end] / stiffness
  const torn = Math.max(0, Math.min(r.connector.maxExtension, r.extension - elastic))
  const figures = commonFigures(plan, { ...r, count })
  return {
    ...figures,
    drop: r.drop,
    extension: r.extension,
    torn,
    arrestForce: (r.extension - torn) * stiffness,
    work: null,
  }
}
