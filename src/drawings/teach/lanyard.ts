/** Lesson d: the lanyard and where it is hooked. A long lanyard hooked low is a long fall. */
import type { ConnectorPart, Worker } from '../../plan/types'
import { formatForce, formatLength, type UnitSystem } from '../../plan/units'
import { type LanyardState, lanyardAt, lanyardCurve, lanyardSentence } from '../../study/teach'
import type { PlotInput } from '../plot'
import { convertForPlot } from '../plot-units'
import { el, svgRoot } from '../svg'
import type { Theme } from '../theme'
import { fitView, type Point, toModel, toPicture } from '../view'
import type { Lesson, LessonPicture } from './lesson'
import { person, shape, stroke, upright, words } from './parts'

export const HOOKS = { least: 0, most: 2.25 } as const
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
    draw: (width, height, theme) => drawLanyard(setup, now, width, height, theme, units),
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

/** Post, worker standing and worker at the lowest, to scale; the hook is what one grabs. */
function drawLanyard(
  setup: LanyardSetup,
  now: LanyardState,
  width: number,
  height: number,
  theme: Theme,
  units: UnitSystem,
): LessonPicture {
  const size = theme.textSize
  const ground = -setup.ground.distance
  const deepest = Math.min(ground, -stateAt(setup, 0).freeFall - 3)
  const { dRingHeight, harnessStretch } = setup.worker
  const view = fitView(
    width,
    height,
    { low: -2.4, high: 4.6 },
    { low: deepest - 0.4, high: HOOKS.most + 0.2 },
    { left: size * 2, right: size * 2, top: size * 1.5, bottom: size * 2 },
    true,
  )
  const hook = toPicture(view, [0, now.hook])
  const feet = now.totalFall === null ? null : -now.totalFall
  const met = feet !== null && now.clearance !== null && now.clearance > setup.ground.distance
  const taut = now.freeFall
  const shownFeet = feet === null ? null : Math.max(feet, ground)
  const picture = svgRoot(
    width,
    height,
    [
      shape(
        view,
        [
          [-2.4, 0],
          [0.25, 0],
          [0.25, -0.3],
          [-2.4, -0.3],
        ],
        theme,
        'concrete',
      ),
      shape(
        view,
        [
          [-2.4, ground],
          [4.6, ground],
          [4.6, ground - 0.3],
          [-2.4, ground - 0.3],
        ],
        theme,
        'ground',
      ),
      words(
        [toPicture(view, [-2.3, ground])[0], toPicture(view, [0, ground - 0.3])[1] + size * 1.2],
        `${setup.ground.name}, ${formatLength(setup.ground.distance, units)} down`,
        theme,
        'quiet',
      ),
      stroke(
        view,
        [
          [0, 0],
          [0, HOOKS.most + 0.1],
        ],
        theme,
        'ink',
        4,
      ),
      ...person(view, [-0.7, 0], dRingHeight, theme),
      stroke(
        view,
        [
          [0, now.hook],
          [-0.7, dRingHeight],
        ],
        theme,
        'quiet',
        1.2,
        '5 3',
      ),
      ...(shownFeet === null || feet === null
        ? []
        : [
            ...person(view, [0.9, shownFeet], dRingHeight, theme, met),
            stroke(
              view,
              [
                [0, now.hook],
                [0.9, shownFeet + dRingHeight + (feet === shownFeet ? harnessStretch : 0)],
              ],
              theme,
              'ink',
              2,
            ),
            ...upright(
              view,
              1.7,
              dRingHeight,
              dRingHeight - taut,
              `free fall ${formatLength(taut, units)}`,
              theme,
              'fails',
            ),
            ...upright(
              view,
              1.7,
              dRingHeight - taut,
              dRingHeight - taut - (now.extension ?? 0),
              `tears, stretches ${formatLength(now.extension ?? 0, units)}`,
              theme,
            ),
            ...upright(
              view,
              -1.7,
              0,
              feet,
              `feet ${formatLength(-feet, units)} down`,
              theme,
              met ? 'fails' : 'ink',
            ),
            ...upright(
              view,
              -1.7,
              feet,
              feet - setup.marginBelow,
              `margin ${formatLength(setup.marginBelow, units)}`,
              theme,
              'quiet',
            ),
          ]),
      ...(now.force === null
        ? []
        : [
            words(
              [toPicture(view, [1.25, 0])[0], toPicture(view, [0, (shownFeet ?? 0) + dRingHeight * 0.4])[1]],
              `on the body ${formatForce(now.force, units)}`,
              theme,
              'accent',
              'start',
              true,
            ),
          ]),
      ...(met
        ? [
            words(
              [toPicture(view, [1.2, ground])[0], toPicture(view, [0, ground])[1] - size * 1.6],
              `meets ${setup.ground.name}, or its margin`,
              theme,
              'fails',
              'start',
              true,
            ),
          ]
        : []),
      el('circle', {
        cx: hook[0],
        cy: hook[1],
        r: size * 0.75,
        fill: theme.inks.panel,
        stroke: theme.inks.accent,
        'stroke-width': theme.stroke * 2,
      }),
    ],
    `A lanyard hooked ${formatLength(now.hook, units)} over the feet`,
  )
  return { picture, grip: hook, valueAt: (point) => toModel(view, point)[1] }
}
