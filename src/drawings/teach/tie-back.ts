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
import type { Point } from '../view'
import type { Lesson } from './lesson'
import { drawTieBack, TIE_BACK_ANGLES } from './tie-back-picture'

export interface TieBackSetup extends TieBackLesson {
  /** Least angle from the vertical, degrees. */
  limit: number
}

/** What a millionth of the pull leaves to the post is the arithmetic's, not the post's. */
const rest = (shaft: number, pull: number): number => (Math.abs(shaft) < 1e-6 * pull ? 0 : shaft)

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
      { name: 'Left to the post’s bending', value: rest(now.shaft, setup.pull), unit: 'N' },
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
    draw: (width, height, theme) => drawTieBack({ setup, now, holds, theme, units }, width, height),
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
