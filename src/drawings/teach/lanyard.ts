/** Lesson d: the lanyard and where it is hooked. A long lanyard hooked low is a long fall. */
import type { ConnectorPart, Worker } from '../../plan/types'
import { formatLength, type UnitSystem } from '../../plan/units'
import { type LanyardState, lanyardAt, lanyardCurve, lanyardSentence } from '../../study/teach'
import type { PlotInput } from '../plot'
import { convertForPlot } from '../plot-units'
import type { Point } from '../view'
import { drawLanyard, HOOKS } from './lanyard-picture'
import type { Lesson } from './lesson'

export const LANYARDS = { least: 0.6, most: 2 } as const

export interface LanyardSetup {
  worker: Pick<Worker, 'mass' | 'dRingHeight' | 'harnessStretch'>
  connector: ConnectorPart
  marginBelow: number
  /** From the walking surface down to what is there, m. */
  ground: { name: string; distance: number }
  /** m */
  length: number
}

const stateAt = (s: LanyardSetup, hook: number): LanyardState =>
  lanyardAt(s.worker, s.connector, s.marginBelow, s.length, hook)

export function lanyardLesson(setup: LanyardSetup, hook: number, units: UnitSystem): Lesson {
  const now = stateAt(setup, hook)
  const left = now.clearance === null ? null : setup.ground.distance - now.clearance
  return {
    id: 'lanyard',
    title: 'The lanyard and its hook',
    sentence: lanyardSentence(now, setup.ground.distance, (m) => formatLength(m, units), setup.ground.name),
    status:
      left === null
        ? { word: 'not known', text: 'the fall could not be computed' }
        : {
            word: left < 0 ? 'fails' : 'holds',
            text:
              left < 0
                ? `${formatLength(-left, units)} short of room over ${setup.ground.name}`
                : `${formatLength(left, units)} left over ${setup.ground.name}`,
          },
    figures: [
      { name: 'Hook over the feet', value: hook, unit: 'm' },
      { name: 'Length of the lanyard', value: setup.length, unit: 'm' },
      { name: 'Free fall', value: now.freeFall, unit: 'm' },
      { name: 'Lanyard tears and stretches', value: now.extension, unit: 'm' },
      { name: 'Force on the body', value: now.force, unit: 'N' },
      { name: 'Total fall', value: now.totalFall, unit: 'm' },
      { name: 'Room needed', value: now.clearance, unit: 'm' },
      { name: 'Room there', value: setup.ground.distance, unit: 'm' },
    ],
    why: 'Free fall = length of the lanyard + height of the D-ring - height of the hook. A lanyard hooked at the feet lets its own length and the height of the D-ring go by before it is taut; hooked above the head nearly nothing. All that speed must then be torn off in the absorber.',
    plot: lanyardPlot(setup, now, units),
    beside: null,
    triangle: null,
    grabbed: {
      label: 'Height of the hook',
      value: hook,
      least: HOOKS.least,
      most: HOOKS.most,
      step: 0.05,
      text: `${formatLength(hook, units)} over the feet`,
    },
    draw: (width, height, theme) =>
      drawLanyard({ setup, now, deepest: stateAt(setup, HOOKS.least), theme, units }, width, height),
  }
}

function lanyardPlot(setup: LanyardSetup, now: LanyardState, units: UnitSystem): PlotInput {
  const per = convertForPlot(units).length
  const curve = lanyardCurve(setup.worker, setup.connector, setup.marginBelow, setup.length)
  const line = (figure: (s: LanyardState) => number | null): Point[] =>
    curve.map((s) => [s.hook * per.per, (figure(s) ?? Number.NaN) * per.per])
  return {
    title: 'Fall against the height of the hook',
    x: { label: 'hook over the feet', unit: per.name },
    y: { label: 'distance', unit: per.name },
    lines: [
      { name: 'free fall', points: line((s) => s.freeFall) },
      { name: 'total fall', points: line((s) => s.totalFall) },
      { name: 'room needed', points: line((s) => s.clearance) },
    ],
    limits: [{ value: setup.ground.distance * per.per, text: setup.ground.name }],
    markers:
      now.clearance === null
        ? []
        : [{ at: [now.hook * per.per, now.clearance * per.per], text: formatLength(now.clearance, units) }],
    cursor: now.hook * per.per,
  }
}
