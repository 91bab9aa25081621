/** The post with its strap seen from the side, to scale; the rope runs to the right. The foot is what one grabs. */
import { formatForce, type UnitSystem } from '../../plan/units'
import { footAt, type TieBackState } from '../../study/teach'
import { el, type SvgElement, svgRoot } from '../svg'
import type { Theme } from '../theme'
import { fitView, type Point, toModel, toPicture, type View } from '../view'
import type { LessonPicture } from './lesson'
import { forceArrow, forceScale, shape, stroke, words } from './parts'
import type { TieBackSetup } from './tie-back'

/** Angles from the vertical to which the foot can be drawn, degrees. */
export const TIE_BACK_ANGLES = { least: 15, most: 70 } as const

export interface TieBackScene {
  setup: TieBackSetup
  now: TieBackState
  holds: boolean
  theme: Theme
  units: UnitSystem
}

export function drawTieBack(scene: TieBackScene, width: number, height: number): LessonPicture {
  const { setup, now, theme } = scene
  const h = setup.height
  const size = theme.textSize
  const view = fitView(
    width,
    height,
    { low: -reachOf(h), high: 1.3 * h },
    { low: -0.85 * h, high: h * 1.15 },
    { left: size * 3, right: size * 3, top: size * 3, bottom: size * 3 },
    true,
  )
  const nodes = [
    ...limitNodes(scene, view),
    ...rigNodes(scene, view),
    angleArc(view, h, now.angle, theme),
    ...forceNodes(scene, view, height),
    footRing(scene, view),
  ]
  const valueAt = (point: Point): number =>
    (Math.atan2(Math.max(0, -toModel(view, point)[0]), h) * 180) / Math.PI
  return {
    picture: svgRoot(width, height, nodes, `A tie-back ${now.angle.toFixed(1)} degrees from the vertical`),
    grip: toPicture(view, [-now.foot, 0]),
    valueAt,
  }
}

/** How far out the foot may come, m. */
const reachOf = (h: number): number => h * Math.tan((TIE_BACK_ANGLES.most * Math.PI) / 180)

/** The girder's top, and how flat the strap has to be. */
function limitNodes({ setup, theme }: TieBackScene, view: View): SvgElement[] {
  const h = setup.height
  const [left, right] = [-reachOf(h) - 0.2 * h, 1.5 * h]
  const foot: Point = [-footAt(setup, setup.limit), 0]
  const [x, y] = toPicture(view, foot)
  return [
    shape(
      view,
      [
        [left, 0],
        [right, 0],
        [right, -0.28 * h],
        [left, -0.28 * h],
      ],
      theme,
      'concrete',
    ),
    stroke(view, [[0, h], foot], theme, 'quiet', 0.8, '5 4'),
    words([x, y + theme.textSize * 1.5], `${setup.limit.toFixed(0)}°`, theme, 'quiet', 'middle', true),
  ]
}

function rigNodes({ setup, now, theme }: TieBackScene, view: View): SvgElement[] {
  const head: Point = [0, setup.height]
  return [
    stroke(view, [[0, 0], head], theme, 'ink', 5),
    stroke(view, [head, [1.5 * setup.height, setup.height]], theme, 'ink', 1.5),
    stroke(view, [head, [-now.foot, 0]], theme, 'strap', 4),
  ]
}

const strapInk = ({ holds }: TieBackScene) => (holds ? 'accent' : 'fails')

function forceNodes(scene: TieBackScene, view: View, height: number): SvgElement[] {
  const { setup, now, theme, units } = scene
  const h = setup.height
  const said = (n: number): string => formatForce(n, units)
  const scale = (0.95 * h * view.scaleX) / setup.pull / 1.15
  const [head, post] = [toPicture(view, [0, h]), toPicture(view, [0, 0])]
  const rope = { at: head, way: [1, 0] as Point, newtons: setup.pull, text: `rope ${said(setup.pull)}` }
  const leg = { at: head, way: [-now.foot, -h] as Point, newtons: now.leg, text: `one leg ${said(now.leg)}` }
  const down = {
    at: post,
    way: [0, -1] as Point,
    newtons: now.axial,
    text: `down the post ${said(now.axial)}`,
  }
  return [
    ...forceArrow({ ...rope, ink: 'ink', anchor: 'middle' }, scale, theme),
    ...forceArrow({ ...leg, ink: strapInk(scene) }, scale, theme),
    ...forceArrow({ ...down, ink: 'ghost', anchor: 'start' }, scale, theme),
    ...forceScale(setup.pull / 2, said(setup.pull / 2), scale, height, theme),
  ]
}

function footRing(scene: TieBackScene, view: View): SvgElement {
  const { now, theme } = scene
  const [cx, cy] = toPicture(view, [-now.foot, 0])
  return el('circle', {
    cx,
    cy,
    r: theme.textSize * 0.75,
    fill: theme.inks.panel,
    stroke: theme.inks[strapInk(scene)],
    'stroke-width': theme.stroke * 2,
  })
}

/** An angle below this has no room for its own number, degrees. */
const NARROW = 45

function angleArc(view: View, h: number, angle: number, theme: Theme) {
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
