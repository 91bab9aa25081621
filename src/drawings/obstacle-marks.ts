/** What lies below as marks seen from the side, and where the fall room enters it. */
import { headHeight } from '../geometry/line'
import type { Line, Plan } from '../plan/types'
import { formatLength } from '../plan/units'
import type { ObstacleResult, Results } from '../study/results'
import type { DrawingWords } from './drawing'
import type { Mark } from './marks'
import type { SideShape } from './obstacle-shapes'
import type { FloorLevel, Side } from './side-marks'
import type { Point, Window } from './view'

export interface ObstacleView {
  side: Side
  /** Stations shown. */
  stations: Window
  /** Height below the girder top where the drawing ends (negative), m. */
  bottom: number
  selected: ReadonlySet<string>
}

/**
 * A result holds the worst gap of all lines. Drawn beside one line it is that line's `own`, or another line's, which this
 * one's room may reach too (`near`) or is too far off for (`far`).
 */
export interface Seen {
  result: ObstacleResult | undefined
  of: 'own' | 'near' | 'far'
}

/** How the results' obstacles are seen from one line, whose room reaches as deep as `levels` tell. */
export function seenBy(
  { plan, line, results }: { plan: Plan; line: Line; results: Results | null },
  levels: readonly FloorLevel[],
): (shape: SideShape) => Seen {
  const reach = sidewaysReach(plan, line, levels)
  return (shape) => {
    const result = results?.obstacles.find((o) => o.id === shape.id)
    const own = !result || result.line === line.id || result.unknown !== undefined
    if (own) return { result, of: 'own' }
    return { result, of: shape.left >= -reach && shape.right <= reach ? 'near' : 'far' }
  }
}

/**
 * No part of the line's room lies farther than this from the girder's middle, m. Feet swing with a radius of the depth and
 * the height from which they hang, less what the line drops and the margin below; the body's own reach comes on top.
 */
function sidewaysReach(plan: Plan, line: Line, levels: readonly FloorLevel[]): number {
  const offset = Math.max(0, ...line.stanchions.map((s) => Math.abs(s.offset)))
  const height = Math.max(0, ...line.stanchions.map((s) => headHeight(plan, s) ?? 0))
  const depth = Math.max(0, ...levels.map((f) => f.depth))
  return offset + depth + height + plan.basis.bodyRadius + plan.basis.marginSide
}

/** One obstacle; faint where the room's plan area does not touch it. */
export function obstacleMarks(shape: SideShape, { result, of }: Seen, view: ObstacleView): Mark[] {
  const points = sideOutline(shape, view)
  if (!points) return []
  const ref = `obstacle:${shape.id}`
  const stroke = view.selected.has(ref) ? ('accent' as const) : ('quiet' as const)
  const untouched = result !== undefined && result.gap === null && result.unknown === undefined
  const beside = untouched || of === 'far'
  const fill = shape.kind === 'water' ? ('water' as const) : ('ground' as const)
  const dash: [number, number] = shape.travels || beside ? [4, 3] : [1, 0]
  const body: Mark = {
    kind: 'path',
    layer: 'OBSTACLES',
    points,
    closed: true,
    fill,
    fillOpacity: beside ? 0.2 : 0.6,
    stroke,
    width: 0.7,
    ref,
    ...(dash[1] > 0 ? { dash } : {}),
  }
  // Where the room enters it, the depth is written on it together with its name; another line's depth is not this one's.
  const clash = of === 'own' && result?.gap != null && result.gap < 0
  // Among many things that stand far aside their names would hide what lies below.
  return clash || of === 'far' ? [body] : [body, nameMark(shape, points, ref)]
}

function nameMark(shape: SideShape, points: Point[], ref: string): Mark {
  const xs = points.map((p) => p[0])
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2
  const top = Math.max(...points.map((p) => p[1]))
  return {
    kind: 'text',
    layer: 'TEXT',
    at: [middle, top],
    text: shape.name,
    ink: 'quiet',
    shift: [0, 13],
    dodge: 'down',
    optional: true,
    ref,
  }
}

/** The outline within what is shown, or null where it lies outside. */
function sideOutline(shape: SideShape, view: ObstacleView): Point[] | null {
  const low = Math.max(shape.low, view.stations.low)
  const high = Math.min(shape.high, view.stations.high)
  if (low >= high) return null
  const height = (elevation: number, station: number): number => elevation - view.side.frame.topAt(station)
  if (Math.max(height(shape.top, low), height(shape.top, high)) <= view.bottom) return null
  const under = (station: number): number =>
    shape.bottom === null ? view.bottom : Math.max(view.bottom, height(shape.bottom, station))
  const over = (station: number): number => Math.max(view.bottom, height(shape.top, station))
  return [
    view.side.at(low, over(low)),
    view.side.at(high, over(high)),
    view.side.at(high, under(high)),
    view.side.at(low, under(low)),
  ]
}

/** Where the underside of the room lies under the top of an obstacle that it meets, cut out in the fails ink. */
export function clashMarks(
  shape: SideShape,
  { result, of }: Seen,
  levels: FloorLevel[],
  side: Side,
  text: (gap: number) => string,
): Mark[] {
  if (!result || result.gap === null || result.gap >= 0 || of === 'far') return []
  const meets = levels.filter((f) => f.station >= shape.low && f.station <= shape.high)
  const inside = meets.filter((f) => -f.depth < shape.top - side.frame.topAt(f.station))
  const ref = `obstacle:${shape.id}`
  const worst = result.station ?? inside[0]?.station ?? null
  const marks: Mark[] = []
  if (inside.length > 1) {
    const over = inside.map((f) => side.at(f.station, shape.top - side.frame.topAt(f.station)))
    const under = inside.map((f) => side.at(f.station, -f.depth))
    const points = [...over, ...under.reverse()]
    marks.push({
      kind: 'path',
      layer: 'CLASHES',
      points,
      closed: true,
      fill: 'fails',
      fillOpacity: 0.85,
      ref,
    })
    marks.push({ kind: 'path', layer: 'CLASHES', points, closed: true, stroke: 'fails', hatch: 'paper', ref })
  }
  if (worst !== null && of === 'own') {
    const at = side.at(worst, shape.top - side.frame.topAt(worst))
    marks.push({
      kind: 'text',
      layer: 'TEXT',
      at,
      text: text(result.gap),
      bold: true,
      ink: 'fails',
      plate: 'panel',
      shift: [0, -6],
      dodge: 'up',
      ref,
    })
  }
  return marks
}

export interface FarBelow {
  /** Lines of text go under the drawing's lower edge, where it leaves room, or stay above it. */
  under?: boolean
  units: 'us' | 'si'
  words: DrawingWords
  seen: (shape: SideShape) => Seen
}

/** Ground and water too far down for the drawing are told in words at its foot. */
export function farBelowMarks(shapes: SideShape[], view: ObstacleView, o: FarBelow): Mark[] {
  const middle = (view.stations.low + view.stations.high) / 2
  return shapes.flatMap((s, i): Mark[] => {
    const down = view.side.frame.topAt(middle) - s.top
    if (s.bottom !== null || down < -view.bottom) return []
    const { result, of } = o.seen(s)
    const gap = of === 'own' ? (result?.gap ?? null) : null
    const told = gap === null ? '' : `, ${o.words.underRoom(formatLength(gap, o.units))}`
    const text = o.words.farBelow(s.name, formatLength(down, o.units)) + told
    const at = view.side.at(view.stations.high, view.bottom)
    const ref = `obstacle:${s.id}`
    return [
      {
        kind: 'text',
        layer: 'TEXT',
        at,
        text,
        ink: 'quiet',
        anchor: 'end',
        shift: o.under ? [-4, 9 + i] : [-4, -4 - i],
        dodge: o.under ? 'down' : 'up',
        ref,
      },
    ]
  })
}
