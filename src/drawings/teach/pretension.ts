/** Lesson c: pretension and absorber. A tight line is not a strong line. */
import { formatForce, formatLength, type UnitSystem } from '../../plan/units'
import { type PretensionSetup, type PretensionState, pretensionSentence } from '../../study/teach'
import type { PlotInput } from '../plot'
import { convertForPlot } from '../plot-units'
import { el, svgRoot } from '../svg'
import type { Theme } from '../theme'
import { fitView, type Point, toPicture } from '../view'
import type { Lesson, LessonPicture } from './lesson'
import { forceArrow, forceScale, person, shape, stroke, upright, words } from './parts'

const PRETENSIONS = { least: 500, most: 12000 } as const

export interface PretensionNow {
  now: PretensionState
  absorber: boolean
}

export function pretensionLesson(setup: PretensionSetup, state: PretensionNow, units: UnitSystem): Lesson {
  const { now } = state
  return {
    id: 'pretension',
    title: 'Pretension and absorber',
    sentence: pretensionSentence(now, setup.plannedState, (m) => formatLength(m, units)),
    status: null,
    figures: [
      { name: 'Pretension', value: now.pretension, unit: 'N' },
      { name: 'Pretension in the plan', value: setup.planned, unit: 'N' },
      { name: 'Greatest tension in a fall', value: now.tension, unit: 'N' },
      { name: 'Line drop', value: now.lineDrop, unit: 'm' },
      { name: 'Room needed', value: now.clearance, unit: 'm' },
      { name: 'Line absorber gives', value: now.absorber, unit: 'm' },
    ],
    why: 'Pretension takes the slack out of the rope, so the fall ends a little higher; but the rope is already pulling when the fall begins. What keeps the pull down is something that gives: sag, stretch, the absorber. The worst corner of the mid-span fall, by the energy method.',
    plot: tensionPlot(setup, now, units),
    beside: clearancePlot(setup, now, units),
    triangle: null,
    grabbed: {
      label: 'Pretension',
      value: now.pretension,
      least: PRETENSIONS.least,
      most: PRETENSIONS.most,
      step: 250,
      text: formatForce(now.pretension, units),
    },
    draw: (width, height, theme) => drawPretension(setup, state, width, height, theme, units),
  }
}

const rows = (
  states: PretensionState[],
  per: number,
  to: number,
  figure: (s: PretensionState) => number | null,
): Point[] => states.map((s) => [s.pretension * per, (figure(s) ?? Number.NaN) * to])

function curves(
  setup: PretensionSetup,
  per: number,
  to: number,
  figure: (s: PretensionState) => number | null,
): PlotInput['lines'] {
  const without = { name: 'without absorber', points: rows(setup.without, per, to, figure) }
  return setup.hasAbsorber
    ? [{ name: 'with absorber', points: rows(setup.withAbsorber, per, to, figure) }, without]
    : [without]
}

function tensionPlot(setup: PretensionSetup, now: PretensionState, units: UnitSystem): PlotInput {
  const { force } = convertForPlot(units)
  return {
    title: 'Tension against pretension',
    x: { label: 'pretension', unit: force.name },
    y: { label: 'greatest tension in a fall', unit: force.name },
    lines: curves(setup, force.per, force.per, (s) => s.tension),
    markers:
      now.tension === null
        ? []
        : [
            {
              at: [now.pretension * force.per, now.tension * force.per],
              text: formatForce(now.tension, units),
            },
          ],
    cursor: now.pretension * force.per,
  }
}

function clearancePlot(setup: PretensionSetup, now: PretensionState, units: UnitSystem): PlotInput {
  const { force, length } = convertForPlot(units)
  return {
    title: 'Room needed against pretension',
    x: { label: 'pretension', unit: force.name },
    y: { label: 'room needed', unit: length.name },
    lines: curves(setup, force.per, length.per, (s) => s.clearance),
    markers: now.clearance === null ? [] : [{ at: [now.pretension * force.per, now.clearance * length.per] }],
    cursor: now.pretension * force.per,
  }
}

/** The longest span at its lowest, to scale, with the tensioner to grab at the right post. */
function drawPretension(
  setup: PretensionSetup,
  { now, absorber }: PretensionNow,
  width: number,
  height: number,
  theme: Theme,
  units: UnitSystem,
): LessonPicture {
  const size = theme.textSize
  const half = setup.span / 2
  const h = setup.height
  const deepest = Math.max(1, ...[...setup.without, ...setup.withAbsorber].map((s) => s.clearance ?? 0))
  const view = fitView(
    width,
    height,
    { low: -half, high: half },
    { low: -deepest * 1.05, high: h * 1.3 },
    { left: size * 4, right: size * 11, top: size * 3, bottom: size * 4 },
    true,
  )
  const most = Math.max(1, ...[...setup.without, ...setup.withAbsorber].map((s) => s.tension ?? 0))
  const scale = (0.42 * (toPicture(view, [half, 0])[0] - toPicture(view, [-half, 0])[0])) / most
  const track = toPicture(view, [half, h])
  const long = size * 9
  const share = (now.pretension - PRETENSIONS.least) / (PRETENSIONS.most - PRETENSIONS.least)
  const grip: Point = [track[0] + size * 1.2 + share * long, track[1]]
  const drop = now.lineDrop
  const feet = now.clearance === null ? null : -(now.clearance - setup.marginBelow)
  const plannedFeet =
    setup.plannedState.clearance === null ? null : -(setup.plannedState.clearance - setup.marginBelow)
  const rope: Point[] =
    drop === null
      ? [
          [-half, h],
          [half, h],
        ]
      : [
          [-half, h],
          [0, h - drop],
          [half, h],
        ]
  const left = toPicture(view, [-half, h])
  const picture = svgRoot(
    width,
    height,
    [
      shape(
        view,
        [
          [-half - 0.4, 0],
          [half + 0.4, 0],
          [half + 0.4, -0.35],
          [-half - 0.4, -0.35],
        ],
        theme,
        'concrete',
      ),
      ...([-half, half] as const).map((x) =>
        stroke(
          view,
          [
            [x, 0],
            [x, h],
          ],
          theme,
          'ink',
          4,
        ),
      ),
      ...(plannedFeet === null
        ? []
        : [
            stroke(
              view,
              [
                [-half * 0.5, plannedFeet],
                [half * 0.5, plannedFeet],
              ],
              theme,
              'ghost',
              1,
              '5 4',
            ),
            words(toPicture(view, [-half * 0.5, plannedFeet]), 'feet as planned', theme, 'ghost', 'end'),
          ]),
      stroke(view, rope, theme, 'ink', 2),
      ...(feet === null || drop === null
        ? []
        : [
            stroke(
              view,
              [
                [0, h - drop],
                [0, feet + setup.dRing],
              ],
              theme,
              'ink',
              1.2,
            ),
            ...person(view, [0, feet], setup.dRing, theme),
            ...upright(view, half * 0.32, 0, feet, formatLength(-feet, units), theme),
          ]),
      ...(absorber
        ? [
            el('rect', {
              x: left[0] + size,
              y: left[1] - size * 0.45,
              width: size * 2.4,
              height: size * 0.9,
              fill: theme.inks.panel,
              stroke: theme.inks.ink,
              'stroke-width': theme.stroke,
            }),
            words(
              [left[0] + size, left[1] - size * 0.9],
              now.absorber === null ? 'absorber' : `absorber gives ${formatLength(now.absorber, units)}`,
              theme,
              'quiet',
            ),
          ]
        : []),
      ...(now.tension === null
        ? []
        : forceArrow(
            {
              at: toPicture(view, [-half, h]),
              way: [half, -(drop ?? 0)],
              newtons: now.tension,
              text: `in a fall ${formatForce(now.tension, units)}`,
              ink: 'accent',
              anchor: 'start',
            },
            scale,
            theme,
          )),
      ...forceScale(most / 4, formatForce(most / 4, units), scale, height, theme),
      el('path', {
        d: `M${track[0]} ${track[1]}H${track[0] + size * 1.2 + long}`,
        stroke: theme.inks.quiet,
        'stroke-width': theme.stroke * 1.5,
        'stroke-dasharray': '3 3',
      }),
      words(
        [track[0] + size * 1.2, track[1] - size * 1.4],
        `tensioner ${formatForce(now.pretension, units)}`,
        theme,
        'ink',
        'start',
        true,
      ),
      el('circle', {
        cx: grip[0],
        cy: grip[1],
        r: size * 0.75,
        fill: theme.inks.panel,
        stroke: theme.inks.accent,
        'stroke-width': theme.stroke * 2,
      }),
    ],
    `A line tensioned to ${formatForce(now.pretension, units)}`,
  )
  const valueAt = (point: Point): number =>
    PRETENSIONS.least + ((point[0] - track[0] - size * 1.2) / long) * (PRETENSIONS.most - PRETENSIONS.least)
  return { picture, grip, valueAt }
}
