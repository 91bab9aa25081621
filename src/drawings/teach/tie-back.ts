/** Lesson a: the foot of the tie-back. Steep straps pull far harder than the rope does. */
import { formatForce, formatLength, type UnitSystem } from '../../plan/units'
import {
  footAt,
  type TieBackLesson,
  type TieBackState,
  tieBackAt,
  tieBackCurve,
  tieBackSentence,
} from '../../study/teach'
import type { PlotInput } from '../plot'
import { convertForPlot } from '../plot-units'
import { el, svgRoot } from '../svg'
import type { Theme } from '../theme'
import { fitView, type Point, toModel, toPicture } from '../view'
import type { Lesson, LessonPicture } from './lesson'
import { forceArrow, forceScale, shape, stroke, words } from './parts'

const TIE_BACK_ANGLES = { least: 15, most: 70 } as const

export interface TieBackSetup extends TieBackLesson {
  /** Least angle from the vertical, degrees. */
  limit: number
}

export function tieBackLesson(setup: TieBackSetup, angle: number, units: UnitSystem): Lesson {
  const now = tieBackAt(setup, footAt(setup, angle))
  const holds = angle >= setup.limit - 1e-9
  const force = (n: number): string => formatForce(n, units)
  return {
    id: 'tie-back',
    title: 'The foot of the tie-back',
    sentence: tieBackSentence(now, setup.pull, setup.limit),
    status: {
      word: holds ? 'holds' : 'fails',
      text: `${angle.toFixed(1)} degrees from the vertical, at least ${setup.limit.toFixed(0)} wanted`,
    },
    figures: [
      { name: 'Angle from the vertical', value: angle, unit: 'deg' },
      { name: 'Foot behind the post', value: now.foot, unit: 'm' },
      { name: 'Pull of the rope', value: setup.pull, unit: 'N' },
      { name: 'Pull in one leg', value: now.leg, unit: 'N' },
      { name: 'Pull in both legs', value: now.legs, unit: 'N' },
      { name: 'Push down the post', value: now.axial, unit: 'N' },
      { name: 'Left to the post’s bending', value: now.shaft, unit: 'N' },
      { name: 'Movement of the head', value: now.movement, unit: 'm' },
    ],
    why: 'The rope pulls sideways, and only the sideways part of the strap’s pull answers it: with all of it in the strap, strap pull = rope pull / sin(angle). The rest of the strap’s pull pushes the post down: rope pull / tan(angle). A post that bends takes a share by its stiffness.',
    plot: forcePlot(setup, now, units),
    beside: movementPlot(setup, now, units),
    triangle: {
      forces: [
        { text: `rope ${force(setup.pull)}`, force: [setup.pull, 0], ink: 'ink' },
        {
          text: `strap ${force(now.legs)}`,
          force: [now.shaft - setup.pull, -now.axial],
          ink: holds ? 'accent' : 'fails',
        },
        ...(now.shaft > 0.005 * setup.pull
          ? [
              {
                text: `bending ${force(now.shaft)}`,
                force: [-now.shaft, 0] as Point,
                ink: 'quiet' as const,
              },
            ]
          : []),
        { text: `post ${force(now.axial)}`, force: [0, now.axial], ink: 'ghost' },
      ],
      longest: longestForce(setup),
    },
    grabbed: {
      label: 'Foot of the tie-back',
      value: angle,
      least: TIE_BACK_ANGLES.least,
      most: TIE_BACK_ANGLES.most,
      step: 1,
      text: `${angle.toFixed(1)} degrees from the vertical, foot ${formatLength(now.foot, units)} behind the post`,
    },
    draw: (width, height, theme) => drawTieBack(setup, now, holds, width, height, theme, units),
  }
}

/** The longest side that the triangle can have while the foot is moved, N: its scale stays as long as the hand drags. */
const longestForce = (setup: TieBackSetup): number =>
  Math.max(
    setup.pull,
    ...tieBackCurve(setup, TIE_BACK_ANGLES.least, TIE_BACK_ANGLES.most).map((s) => s.axial),
  )

function forcePlot(setup: TieBackSetup, now: TieBackState, units: UnitSystem): PlotInput {
  const u = convertForPlot(units).force
  const curve = tieBackCurve(setup, TIE_BACK_ANGLES.least, TIE_BACK_ANGLES.most)
  const most = Math.max(...curve.map((s) => Math.max(s.leg, s.axial))) * u.per
  return {
    title: 'Forces against the angle',
    x: {
      label: 'angle from the vertical',
      unit: 'degrees',
      range: { low: TIE_BACK_ANGLES.least, high: TIE_BACK_ANGLES.most },
    },
    y: { label: 'force', unit: u.name },
    lines: [
      { name: 'in one leg', points: curve.map((s) => [s.angle, s.leg * u.per]) },
      { name: 'down the post', points: curve.map((s) => [s.angle, s.axial * u.per]) },
      {
        name: `${setup.limit.toFixed(0)} degrees`,
        points: [
          [setup.limit, 0],
          [setup.limit, most],
        ],
        ink: 'fails',
        dash: [4, 3],
      },
    ],
    markers: [
      { at: [now.angle, now.leg * u.per], text: formatForce(now.leg, units), ink: 'accent' },
      { at: [now.angle, now.axial * u.per], ink: 'accent' },
    ],
    cursor: now.angle,
  }
}

function movementPlot(setup: TieBackSetup, now: TieBackState, units: UnitSystem): PlotInput {
  const [per, unit] = units === 'us' ? [1 / 0.0254, 'in'] : [1000, 'mm']
  const curve = tieBackCurve(setup, TIE_BACK_ANGLES.least, TIE_BACK_ANGLES.most)
  return {
    title: 'Movement of the head',
    x: { label: 'angle from the vertical', unit: 'degrees' },
    y: { label: 'head moves', unit },
    lines: [{ name: '', points: curve.map((s) => [s.angle, s.movement * per]) }],
    markers: [{ at: [now.angle, now.movement * per], ink: 'accent' }],
    cursor: now.angle,
  }
}

/** The post with its strap seen from the side, to scale; the rope runs to the right. */
function drawTieBack(
  setup: TieBackSetup,
  now: TieBackState,
  holds: boolean,
  width: number,
  height: number,
  theme: Theme,
  units: UnitSystem,
): LessonPicture {
  const h = setup.height
  const size = theme.textSize
  const reach = h * Math.tan((TIE_BACK_ANGLES.most * Math.PI) / 180)
  const view = fitView(
    width,
    height,
    { low: -reach, high: 1.3 * h },
    { low: -0.85 * h, high: h * 1.15 },
    { left: size * 3, right: size * 3, top: size * 3, bottom: size * 3 },
    true,
  )
  const scale = (0.95 * h * view.scaleX) / setup.pull / 1.15
  const head = toPicture(view, [0, h])
  const foot = toPicture(view, [-now.foot, 0])
  const post = toPicture(view, [0, 0])
  const strapInk = holds ? 'accent' : 'fails'
  const limitFoot = footAt(setup, setup.limit)
  const picture = svgRoot(
    width,
    height,
    [
      shape(
        view,
        [
          [-reach - 0.2 * h, 0],
          [1.5 * h, 0],
          [1.5 * h, -0.28 * h],
          [-reach - 0.2 * h, -0.28 * h],
        ],
        theme,
        'concrete',
      ),
      stroke(
        view,
        [
          [0, h],
          [-limitFoot, 0],
        ],
        theme,
        'quiet',
        0.8,
        '5 4',
      ),
      words(
        [toPicture(view, [-limitFoot, 0])[0], post[1] + size * 1.5],
        `${setup.limit.toFixed(0)}°`,
        theme,
        'quiet',
        'middle',
        true,
      ),
      stroke(
        view,
        [
          [0, 0],
          [0, h],
        ],
        theme,
        'ink',
        5,
      ),
      stroke(
        view,
        [
          [0, h],
          [1.5 * h, h],
        ],
        theme,
        'ink',
        1.5,
      ),
      stroke(
        view,
        [
          [0, h],
          [-now.foot, 0],
        ],
        theme,
        'strap',
        4,
      ),
      angleArc(view, h, now.angle, theme),
      ...forceArrow(
        {
          at: head,
          way: [1, 0],
          newtons: setup.pull,
          text: `rope ${formatForce(setup.pull, units)}`,
          ink: 'ink',
          anchor: 'middle',
        },
        scale,
        theme,
      ),
      ...forceArrow(
        {
          at: head,
          way: [-now.foot, -h],
          newtons: now.leg,
          text: `one leg ${formatForce(now.leg, units)}`,
          ink: strapInk,
        },
        scale,
        theme,
      ),
      ...forceArrow(
        {
          at: post,
          way: [0, -1],
          newtons: now.axial,
          text: `down the post ${formatForce(now.axial, units)}`,
          ink: 'ghost',
          anchor: 'start',
        },
        scale,
        theme,
      ),
      ...forceScale(setup.pull / 2, formatForce(setup.pull / 2, units), scale, height, theme),
      el('circle', {
        cx: foot[0],
        cy: foot[1],
        r: size * 0.75,
        fill: theme.inks.panel,
        stroke: theme.inks[strapInk],
        'stroke-width': theme.stroke * 2,
      }),
    ],
    `A tie-back ${now.angle.toFixed(1)} degrees from the vertical`,
  )
  const valueAt = (point: Point): number =>
    (Math.atan2(Math.max(0, -toModel(view, point)[0]), h) * 180) / Math.PI
  return { picture, grip: foot, valueAt }
}

/** Degrees. */
const NARROW = 45

function angleArc(view: Parameters<typeof stroke>[0], h: number, angle: number, theme: Theme) {
  const steps = 16
  const points = Array.from({ length: steps + 1 }, (_, i): Point => {
    const a = (angle * Math.PI * i) / steps / 180
    return [-0.34 * h * Math.sin(a), h - 0.34 * h * Math.cos(a)]
  })
  const middle = (angle * Math.PI) / 360
  const within = toPicture(view, [-0.43 * h * Math.sin(middle), h - 0.43 * h * Math.cos(middle)])
  const beside = toPicture(view, [0, 0.66 * h])
  // A narrow angle has no room for its own number: it stands on the post's other side.
  const narrow = angle < NARROW
  const at: Point = narrow ? [beside[0] + theme.textSize * 0.7, beside[1]] : within
  const anchor = narrow ? 'start' : 'middle'
  return el(
    'g',
    {},
    stroke(view, points, theme, 'ink', 1),
    words([at[0], at[1] + theme.textSize * 0.35], `${angle.toFixed(1)}°`, theme, 'ink', anchor, true),
  )
}
