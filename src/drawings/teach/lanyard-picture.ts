/** Post, worker standing and worker at the lowest, to scale; the hook is what one grabs. */
import { formatForce, formatLength, type UnitSystem } from '../../plan/units'
import type { LanyardState } from '../../study/teach'
import { el, type SvgElement, svgRoot } from '../svg'
import type { Theme } from '../theme'
import { fitView, type Point, toModel, toPicture, type View } from '../view'
import type { LanyardSetup } from './lanyard'
import type { LessonPicture } from './lesson'
import { person, shape, stroke, upright, words } from './parts'

/** Where one may hook in, m over the feet. */
export const HOOKS = { least: 0, most: 2.25 } as const

export interface LanyardScene {
  setup: LanyardSetup
  now: LanyardState
  /** The same lanyard hooked lowest: what the picture must have room for whatever the hand does. */
  deepest: LanyardState
  theme: Theme
  units: UnitSystem
}

const [LEFT, RIGHT] = [-3.4, 5.4]

/**
 * Elevation at which the ground is drawn, m, the walking surface at 0: where it is, or, where it is far below all that a
 * fall needs, so near that the fall can still be seen; it is then broken off and says so.
 */
function groundOf({ setup, deepest }: LanyardScene): { drawn: number; broken: boolean } {
  const need = deepest.clearance ?? deepest.freeFall + 3
  const most = 1.4 * need
  return { drawn: -Math.min(setup.ground.distance, most), broken: setup.ground.distance > most }
}

export function drawLanyard(scene: LanyardScene, width: number, height: number): LessonPicture {
  const { now, theme, units, deepest } = scene
  const size = theme.textSize
  const ground = groundOf(scene)
  const view = fitView(
    width,
    height,
    { low: LEFT, high: RIGHT },
    { low: Math.min(ground.drawn, -deepest.freeFall - 1) - 0.4, high: HOOKS.most + 0.2 },
    { left: size, right: size, top: size * 1.5, bottom: size * 2 },
    true,
  )
  const hook = toPicture(view, [0, now.hook])
  const nodes = [
    slab(view, LEFT, 0.25, 0, theme, 'concrete'),
    ...groundNodes(scene, view, ground),
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
    ...standing(scene, view),
    ...(now.totalFall === null ? [] : fallen(scene, view, now.totalFall, ground.drawn)),
    ring(hook, theme),
  ]
  const said = `A lanyard hooked ${formatLength(now.hook, units)} over the feet`
  return {
    picture: svgRoot(width, height, nodes, said),
    grip: hook,
    valueAt: (point) => toModel(view, point)[1],
  }
}

const slab = (view: View, from: number, to: number, top: number, theme: Theme, ink: 'concrete' | 'ground') =>
  shape(
    view,
    [
      [from, top],
      [to, top],
      [to, top - 0.3],
      [from, top - 0.3],
    ],
    theme,
    ink,
  )

/** Whether the body, or the margin kept under it, comes to what is there. */
const meetsGround = ({ setup, now }: LanyardScene): boolean =>
  now.clearance !== null && now.clearance > setup.ground.distance

function groundNodes(
  scene: LanyardScene,
  view: View,
  { drawn, broken }: { drawn: number; broken: boolean },
): SvgElement[] {
  const { setup, theme, units } = scene
  // At the right, since the margin's own figure may reach down here at the left.
  const at: Point = [
    toPicture(view, [RIGHT - 0.1, 0])[0],
    toPicture(view, [0, drawn - 0.3])[1] + theme.textSize * 1.2,
  ]
  const met = meetsGround(scene)
  const down = `${setup.ground.name}, ${formatLength(setup.ground.distance, units)} down`
  return [
    slab(view, LEFT, RIGHT, drawn, theme, 'ground'),
    met
      ? words(at, `short of room over ${setup.ground.name}`, theme, 'fails', 'end', true)
      : words(at, down, theme, 'quiet', 'end'),
    ...(broken ? brokenOff(view, drawn, theme) : []),
  ]
}

/** The zigzag that says of a height that it is not to scale (ISO 128: break line). */
function brokenOff(view: View, ground: number, theme: Theme): SvgElement[] {
  const y = ground + 0.55
  const zigzag: Point[] = [2.6, 3, 3.4, 3.8].map((x, i) => [x, y + (i === 1 ? 0.2 : i === 2 ? -0.2 : 0)])
  const [x, line] = toPicture(view, [LEFT + 0.1, y])
  return [
    stroke(view, [[LEFT, y], ...zigzag, [RIGHT, y]], theme, 'quiet', 0.8),
    words([x, line - theme.textSize * 0.5], 'not to scale from here down', theme, 'quiet'),
  ]
}

function standing({ setup, now, theme }: LanyardScene, view: View): SvgElement[] {
  const { dRingHeight } = setup.worker
  return [
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
  ]
}

/** The body at its lowest, or on what it meets before, and the distances that add up to it. */
function fallen(scene: LanyardScene, view: View, totalFall: number, ground: number): SvgElement[] {
  const { setup, now, theme, units } = scene
  const { dRingHeight, harnessStretch } = setup.worker
  const met = meetsGround(scene)
  const feet = Math.max(-totalFall, ground)
  const ringAt = feet + dRingHeight + (feet === -totalFall ? harnessStretch : 0)
  const size = theme.textSize
  const beside = (x: number, y: number, lift: number): Point => [
    toPicture(view, [x, 0])[0],
    toPicture(view, [0, y])[1] - size * lift,
  ]
  return [
    ...person(view, [0.9, feet], dRingHeight, theme, met),
    stroke(
      view,
      [
        [0, now.hook],
        [0.9, ringAt],
      ],
      theme,
      'ink',
      2,
    ),
    ...distances(scene, view, totalFall, met),
    ...(now.force === null
      ? []
      : [
          words(
            beside(1.35, feet + dRingHeight * 0.4, 0),
            `on the body ${formatForce(now.force, units)}`,
            theme,
            'accent',
            'start',
            true,
          ),
        ]),
  ]
}

function distances({ setup, now, theme, units }: LanyardScene, view: View, fall: number, met: boolean) {
  const { dRingHeight } = setup.worker
  const said = (name: string, m: number): string => `${name} ${formatLength(m, units)}`
  const taut = dRingHeight - now.freeFall
  const torn = now.extension ?? 0
  return [
    ...upright(view, 1.7, dRingHeight, taut, said('free fall', now.freeFall), theme, 'fails'),
    ...upright(view, 1.7, taut, taut - torn, said('tears, stretches', torn), theme),
    ...upright(view, -3.1, 0, -fall, said('total fall', fall), theme, met ? 'fails' : 'ink'),
    ...upright(
      view,
      -3.1,
      -fall,
      -fall - setup.marginBelow,
      said('margin', setup.marginBelow),
      theme,
      'quiet',
    ),
  ]
}

const ring = ([cx, cy]: Point, theme: Theme): SvgElement =>
  el('circle', {
    cx,
    cy,
    r: theme.textSize * 0.75,
    fill: theme.inks.panel,
    stroke: theme.inks.accent,
    'stroke-width': theme.stroke * 2,
  })
