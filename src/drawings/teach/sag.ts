/** Lesson b: the sag. The straighter the rope, the harder it pulls. */
import { formatForce, formatLength, type UnitSystem } from '../../plan/units'
import { PUBLISHED, type SagState, sagAt, sagCurve, sagSentence } from '../../study/teach'
import type { PlotInput } from '../plot'
import { el, svgRoot } from '../svg'
import type { Theme } from '../theme'
import { fitView, type Point, toModel, toPicture } from '../view'
import type { Lesson, LessonPicture } from './lesson'
import { forceArrow, forceScale, shape, stroke, words } from './parts'

const SAG_ANGLES = { least: 1.5, most: 35 } as const

export interface SagSetup {
  /** m, and N on the rope at mid-span. */
  span: number
  force: number
}

export function sagLesson(setup: SagSetup, angle: number, units: UnitSystem): Lesson {
  const now = sagAt(setup.span, setup.force, angle)
  return {
    id: 'sag',
    title: 'The sag',
    sentence: now ? sagSentence(now) : 'At this sag the rope could not be computed.',
    status: now ? null : { word: 'not known', text: 'the computation does not come to an end here' },
    figures: [
      { name: 'Angle from the horizontal', value: angle, unit: 'deg' },
      { name: 'Sag at mid-span', value: now?.sag ?? null, unit: 'm' },
      { name: 'Span', value: setup.span, unit: 'm' },
      { name: 'Arrest force', value: setup.force, unit: 'N' },
      { name: 'Tension in the rope', value: now?.tension ?? null, unit: 'N' },
      { name: 'Tension over arrest force', value: now?.ratio ?? null, unit: 'ratio' },
    ],
    why: 'The two halves of the rope must carry the worker up between them: 2 x tension x sin(angle) = arrest force. A small angle leaves only a small part of each pull to carry. Published marks: about 2 to 1 at 15 degrees, 6 to 1 at 5 degrees (OSHA 1926 Subpart M, Appendix C).',
    plot: sagPlot(setup, now),
    beside: null,
    triangle: null,
    grabbed: {
      label: 'Sag of the rope at mid-span',
      value: angle,
      least: SAG_ANGLES.least,
      most: SAG_ANGLES.most,
      step: 0.5,
      text: `${angle.toFixed(1)} degrees, sag ${formatLength(now?.sag ?? 0, units)}`,
    },
    draw: (width, height, theme) => drawSag(setup, angle, now, width, height, theme, units),
  }
}

function sagPlot(setup: SagSetup, now: SagState | null): PlotInput {
  const curve = sagCurve(setup.span, setup.force, SAG_ANGLES.least, SAG_ANGLES.most)
  return {
    title: 'Tension against the sag angle',
    x: { label: 'sag angle', unit: 'degrees', range: { low: 0, high: SAG_ANGLES.most } },
    y: { label: 'tension over arrest force', unit: '', range: { low: 0, high: 20 } },
    lines: [{ name: '', points: curve.map((s) => [s.angle, s.ratio]) }],
    markers: [
      ...PUBLISHED.map((p) => ({ at: [p.angle, p.ratio] as Point, text: p.text, ink: 'ghost' as const })),
      ...(now
        ? [{ at: [now.angle, now.ratio] as Point, text: now.ratio.toFixed(1), ink: 'accent' as const }]
        : []),
    ],
    ...(now ? { cursor: now.angle } : {}),
  }
}

/** The span from the side, to scale; the rope's two pulls and the worker's are drawn at the middle. */
function drawSag(
  setup: SagSetup,
  angle: number,
  now: SagState | null,
  width: number,
  height: number,
  theme: Theme,
  units: UnitSystem,
): LessonPicture {
  const { span, force } = setup
  const size = theme.textSize
  const half = span / 2
  const deepest = half * Math.tan((SAG_ANGLES.most * Math.PI) / 180)
  const view = fitView(
    width,
    height,
    { low: -half, high: half },
    { low: -deepest - 0.18 * span, high: 0.12 * span },
    { left: size * 4, right: size * 4, top: size * 2, bottom: size * 4 },
    true,
  )
  const sag = half * Math.tan((angle * Math.PI) / 180)
  const low = toPicture(view, [0, -sag])
  // The scale is such that the greatest pull of the lesson still ends at the posts.
  const scale = (half * view.scaleX * 0.98) / (force / (2 * Math.sin((SAG_ANGLES.least * Math.PI) / 180)))
  const seen = Math.max(scale, (0.1 * span * view.scaleX) / force)
  const pulls = now
    ? ([-1, 1] as const).flatMap((side) =>
        forceArrow(
          {
            at: low,
            way: [side * half, sag],
            newtons: Math.min(now.tension, (half * view.scaleX * 0.98) / seen),
            text: formatForce(now.tension, units),
            ink: 'accent',
            anchor: 'middle',
          },
          seen,
          theme,
        ),
      )
    : []
  const cut = now && now.tension * seen > half * view.scaleX * 0.98
  const picture = svgRoot(
    width,
    height,
    [
      ...([-1, 1] as const).map((side) =>
        stroke(
          view,
          [
            [side * half, 0],
            [side * half, -deepest - 0.1 * span],
          ],
          theme,
          'ink',
          4,
        ),
      ),
      stroke(
        view,
        [
          [-half, 0],
          [half, 0],
        ],
        theme,
        'quiet',
        0.8,
        '5 4',
      ),
      shape(
        view,
        [
          [-half - 0.05 * span, -deepest - 0.1 * span],
          [half + 0.05 * span, -deepest - 0.1 * span],
          [half + 0.05 * span, -deepest - 0.17 * span],
          [-half - 0.05 * span, -deepest - 0.17 * span],
        ],
        theme,
        'concrete',
      ),
      stroke(
        view,
        [
          [-half, 0],
          [0, -sag],
          [half, 0],
        ],
        theme,
        'ink',
        2,
      ),
      ...pulls,
      ...forceArrow(
        {
          at: low,
          way: [0, -1],
          newtons: force,
          text: `worker ${formatForce(force, units)}`,
          ink: 'fails',
          anchor: 'middle',
        },
        seen,
        theme,
      ),
      words(
        [toPicture(view, [-half, 0])[0] + size * 3, toPicture(view, [0, 0])[1] - size * 2],
        `${angle.toFixed(1)}°`,
        theme,
        'ink',
        'start',
        true,
      ),
      ...forceScale(
        force,
        `${formatForce(force, units)}${cut ? '; the pulls are longer than there is room for' : ''}`,
        seen,
        height,
        theme,
      ),
      el('circle', {
        cx: low[0],
        cy: low[1],
        r: size * 0.75,
        fill: theme.inks.panel,
        stroke: theme.inks.accent,
        'stroke-width': theme.stroke * 2,
      }),
    ],
    `A rope sagging ${angle.toFixed(1)} degrees`,
  )
  const valueAt = (point: Point): number =>
    (Math.atan2(Math.max(0, -toModel(view, point)[1]), half) * 180) / Math.PI
  return { picture, grip: low, valueAt }
}
