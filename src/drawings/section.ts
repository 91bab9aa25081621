/**
 * The cross-section at one station, looking from the girder's start to its end: the left side of the girder is at the
 * left. Girder and neighbours, decks, the room's underside, the hanging body and what is below, all to scale.
 */
import type { Girder, GirderSection, Plan } from '../plan/types'
import { formatLength } from '../plan/units'
import { type Drawing, type DrawingWords, englishDrawingWords } from './drawing'
import type { PaperSize } from './elevation'
import { type GirderRoll, girderRoll } from './frame'
import type { Mark } from './marks'
import { type MeshBounds, type SideShape, sideShapes } from './obstacle-shapes'
import { picture } from './picture'
import { clipPolygon } from './plan-view'
import { paperTheme } from './theme'
import { type Margins, type Point, paperScale, scaledView, type Window } from './view'

export interface SectionInput {
  plan: Plan
  girder: string
  station: number
  /** Underside of the room there: offset (m, positive left) and height above the girder top, in order; empty: not known. */
  underside: Point[]
  /** Point of attachment and feet of the hanging body, as offset and height above the girder top. */
  attachment?: Point
  feet?: Point
  /** Height of the installed rope there, and its offset. */
  rope?: Point
  meshes?: MeshBounds
  units: 'us' | 'si'
  words?: DrawingWords
}

const margins: Margins = { left: 12, right: 66, top: 14, bottom: 14 }

/** The section; null where the girder is missing. */
export function crossSection(input: SectionInput, size: PaperSize): Drawing | null {
  const girder = input.plan.girders.find((g) => g.id === input.girder)
  if (!girder) return null
  const roll = girderRoll(girder)
  const shapes = sideShapes(input.plan, girder, input.meshes).filter(
    (s) => s.low <= input.station && s.high >= input.station,
  )
  const { x, y } = sectionWindow(input, girder, shapes, roll)
  const scale = size.scale ?? paperScale(x, y, size.width, size.height, margins)
  const view = scaledView(scale, x, y, margins)
  const marks = sectionMarks(input, girder, roll, shapes, x, y)
  const title = `Section at ${formatLength(input.station, input.units)}`
  return { marks, picture: picture(marks, view, size.theme ?? paperTheme, { title }), view, scale }
}

/** Offsets run to the left in the plan and to the right on paper turned: left stays left. */
const flip = ([offset, height]: Point): Point => [-offset, height]

function sectionWindow(input: SectionInput, girder: Girder, shapes: SideShape[], roll: GirderRoll) {
  const under = input.underside.map(flip)
  const wide = Math.max(girder.section.topWidth * 1.2, 1.6, ...under.map((p) => Math.abs(p[0]) + 0.6))
  const deep = Math.max(girder.section.depth, ...under.map((p) => -p[1]), -(input.feet?.[1] ?? 0))
  const tops = shapes.map((s) => roll.topAt(input.station) - s.top).filter((d) => d > 0 && d < deep * 2.2)
  const low = -Math.max(deep + 0.5, ...tops.map((d) => d + 0.5))
  const high = Math.max(0.4, (input.rope?.[1] ?? 0) + 0.3)
  return { x: { low: -wide, high: wide }, y: { low, high } }
}

function sectionMarks(
  input: SectionInput,
  own: Girder,
  roll: GirderRoll,
  shapes: SideShape[],
  x: Window,
  y: Window,
): Mark[] {
  const top = roll.topAt(input.station)
  return [
    ...shapes.flatMap((s) => obstacleSection(s, top, x, y)),
    ...roomSection(input, own),
    ...input.plan.girders.flatMap((g) => girderSection(g, own, roll, input.station, x, y)),
    ...bodyMarks(input),
    ...sectionDimensions(input, shapes, top, y),
  ]
}

/** The outline of a girder's section about its top centre: offset and height, m. */
export function sectionOutline(s: GirderSection): Point[] {
  const [t, w, b] = [s.topWidth / 2, s.webThickness / 2, s.bottomWidth / 2]
  const [under, over] = [-s.topThickness, -(s.depth - s.bottomThickness)]
  const right: Point[] = [
    [t, 0],
    [t, under],
    [w, under],
    [w, over],
    [b, over],
    [b, -s.depth],
  ]
  return [...right, ...[...right].reverse().map(([x, z]): Point => [-x, z])]
}

function girderSection(
  g: Girder,
  own: Girder,
  roll: GirderRoll,
  station: number,
  x: Window,
  y: Window,
): Mark[] {
  const centre = g.id === own.id ? { offset: 0, height: 0 } : centreAt(g, roll, station)
  if (!centre) return []
  const shifted = sectionOutline(g.section).map(([o, z]): Point => [o - centre.offset, z + centre.height])
  const points = clipPolygon(shifted, x, y)
  if (points.length < 3) return []
  const ref = `girder:${g.id}`
  return [
    {
      kind: 'path',
      layer: 'GIRDERS',
      points,
      closed: true,
      fill: 'concrete',
      stroke: 'ink',
      width: 0.8,
      hatch: 'quiet',
      ref,
    },
  ]
}

/** Where another girder's top centreline crosses the plane of the section; null where it does not reach it. */
function centreAt(g: Girder, roll: GirderRoll, station: number): { offset: number; height: number } | null {
  const [a, b] = [roll.unroll(g.start), roll.unroll(g.end)]
  if (Math.abs(b.station - a.station) < 1e-9) return null
  const share = (station - a.station) / (b.station - a.station)
  if (share < 0 || share > 1) return null
  const mix = (p: number, q: number): number => p + (q - p) * share
  return { offset: mix(a.offset, b.offset), height: mix(a.height, b.height) }
}

function obstacleSection(s: SideShape, top: number, x: Window, y: Window): Mark[] {
  const [left, right] = [Math.max(-s.left, x.low), Math.min(-s.right, x.high)]
  const over = s.top - top
  if (left >= right || over <= y.low) return []
  const under = Math.max(y.low, s.bottom === null ? y.low : s.bottom - top)
  const points: Point[] = [
    [left, over],
    [right, over],
    [right, under],
    [left, under],
  ]
  const fill = s.kind === 'water' ? 'water' : 'ground'
  const ref = `obstacle:${s.id}`
  return [
    {
      kind: 'path',
      layer: 'OBSTACLES',
      points,
      closed: true,
      fill,
      fillOpacity: 0.6,
      stroke: 'quiet',
      width: 0.7,
      ref,
    },
    {
      kind: 'text',
      layer: 'TEXT',
      at: [left, over],
      text: s.name,
      ink: 'quiet',
      anchor: 'start',
      shift: [4, 10],
      dodge: 'down',
      optional: true,
      ref,
    },
  ]
}

/** The room down to its underside; where it is not known the drawing says nothing rather than guess. */
function roomSection(input: SectionInput, own: Girder): Mark[] {
  const under = input.underside.map(flip)
  const [first, last] = [under[0], under.at(-1)]
  if (!first || !last || under.length < 2) return []
  const points: Point[] = [...under, [last[0], 0], [first[0], 0]]
  const ref = `room:${own.id}`
  return [
    { kind: 'path', layer: 'FALL-ROOM', points, closed: true, fill: 'room', fillOpacity: 0.14, ref },
    { kind: 'path', layer: 'FALL-ROOM', points: under, stroke: 'room', width: 1.3, ref },
  ]
}

function bodyMarks(input: SectionInput): Mark[] {
  const marks: Mark[] = []
  if (input.rope) {
    marks.push({
      kind: 'dot',
      layer: 'ROPE-INSTALLED',
      at: flip(input.rope),
      radius: 2.2,
      stroke: 'quiet',
      fill: 'paper',
    })
  }
  if (input.attachment && input.feet) {
    const points = [flip(input.attachment), flip(input.feet)]
    marks.push({ kind: 'path', layer: 'ROPE-FALL', points, stroke: 'ink', width: 1, dash: [5, 3] })
    marks.push({ kind: 'dot', layer: 'ROPE-FALL', at: points[0]!, radius: 2.2, fill: 'ink' })
  }
  return marks
}

/** Depth of the room under the girder top at the right, and how wide it is. */
function sectionDimensions(input: SectionInput, shapes: SideShape[], top: number, y: Window): Mark[] {
  const under = input.underside.map(flip)
  if (under.length < 2) return []
  const low = Math.min(...under.map((p) => p[1]))
  const [left, right] = [Math.min(...under.map((p) => p[0])), Math.max(...under.map((p) => p[0]))]
  const words = input.words ?? englishDrawingWords
  const edge = Math.max(right, input.plan.girders.find((g) => g.id === input.girder)!.section.topWidth / 2)
  const marks: Mark[] = [
    {
      kind: 'dimension',
      layer: 'DIMENSIONS',
      from: [edge, 0],
      to: [edge, low],
      text: formatLength(-low, input.units),
      axis: 'up',
      away: 10,
    },
    {
      kind: 'dimension',
      layer: 'DIMENSIONS',
      from: [left, low],
      to: [right, low],
      text: formatLength(right - left, input.units),
      axis: 'across',
      away: -16,
      optional: true,
    },
  ]
  const near = shapes.filter(
    (s) => s.top - top < 0 && s.top - top > y.low && -s.left < right && -s.right > left,
  )
  for (const s of near) {
    const gap = low - (s.top - top)
    const text =
      gap >= 0
        ? words.underRoom(formatLength(gap, input.units))
        : words.into(formatLength(-gap, input.units), s.name)
    marks.push({
      kind: 'text',
      layer: 'TEXT',
      at: [0, s.top - top],
      text,
      ink: gap < 0 ? 'fails' : 'quiet',
      bold: gap < 0,
      shift: [0, -4],
      dodge: 'up',
    })
  }
  return marks
}
