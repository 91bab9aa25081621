/** The plan view of one line to scale, in its own girder's directions: station across, offset upwards. */
import { headHeight } from '../geometry/line'
import { loopStation } from '../geometry/loops'
import type { Girder, Obstacle, Plan, Vec3 } from '../plan/types'
import { formatLength } from '../plan/units'
import type { Drawing } from './drawing'
import type { PaperSize } from './elevation'
import { type GirderRoll, girderRoll } from './frame'
import { rowOfLine } from './loops'
import type { Mark } from './marks'
import { boxCorners, frameStrips, laneStrips, type MeshBounds } from './obstacle-shapes'
import { picture } from './picture'
import { type TapeInput, tapeWindow } from './tape'
import { paperTheme } from './theme'
import { type Margins, type Point, paperScale, scaledView, type Window } from './view'

export interface PlanViewInput extends TapeInput {
  /** Outline of the fall room in plan, m, where it was computed. */
  roomOutline?: Point[]
}

const margins: Margins = { left: 10, right: 10, top: 34, bottom: 14 }

/** The plan view; null where the line's girder is missing or it has no stanchions. */
export function planView(input: PlanViewInput, size: PaperSize): Drawing | null {
  const girder = input.plan.girders.find((g) => g.id === input.line.girder)
  if (!girder || input.line.stanchions.length === 0) return null
  const roll = girderRoll(girder)
  const stations = tapeWindow(input.plan, input.line)
  const x: Window = { low: stations.low * roll.planRate, high: stations.high * roll.planRate }
  const half = Math.max(2.5, girder.section.topWidth)
  const y: Window = { low: -half, high: half }
  const scale = size.scale ?? paperScale(x, y, size.width, size.height, margins)
  const view = scaledView(scale, x, y, margins)
  const marks = clipped(planMarks(input, girder, roll), x, y)
  const made = picture(marks, view, size.theme ?? paperTheme, { title: `Plan of ${input.line.name}` })
  return { marks, picture: made, view, scale }
}

function planMarks(input: PlanViewInput, own: Girder, roll: GirderRoll): Mark[] {
  const at = (station: number, offset: number): Point => [station * roll.planRate, offset]
  const flat = (point: Vec3): Point => {
    const { station, offset } = roll.unroll(point)
    return at(station, offset)
  }
  const room: Mark[] = (input.roomOutline?.length ?? 0) > 2 ? [roomMark(input, flat)] : []
  return [
    ...input.plan.girders.map((g) => girderOutline(g, flat, g.id === own.id)),
    ...obstaclesInPlan(input.plan, flat, input.meshes ?? {}),
    ...room,
    ...loopsInPlan(own, at, input),
    ...tieBacksInPlan(input, own, at),
    ...stanchionsInPlan(input, at),
    ...spansInPlan(input, at),
  ]
}

const roomMark = (input: PlanViewInput, flat: (p: Vec3) => Point): Mark => {
  const points = (input.roomOutline ?? []).map(([x, y]) => flat([x, y, 0]))
  const ref = `room:${input.line.id}`
  return {
    kind: 'path',
    layer: 'FALL-ROOM',
    points,
    closed: true,
    fill: 'room',
    fillOpacity: 0.1,
    stroke: 'room',
    ref,
  }
}

function girderOutline(g: Girder, flat: (p: Vec3) => Point, own: boolean): Mark {
  const roll = girderRoll(g)
  const half = g.section.topWidth / 2
  const corners: Vec3[] = [
    roll.point(0, half),
    roll.point(roll.length, half),
    roll.point(roll.length, -half),
    roll.point(0, -half),
  ]
  const points = corners.map(flat)
  const common = { kind: 'path', layer: 'GIRDERS', points, closed: true, ref: `girder:${g.id}` } as const
  return {
    ...common,
    fill: 'concrete',
    fillOpacity: own ? 0.4 : 0.2,
    stroke: own ? 'ink' : 'quiet',
    width: 0.7,
  }
}

const obstaclesInPlan = (plan: Plan, flat: (p: Vec3) => Point, meshes: MeshBounds): Mark[] =>
  plan.obstacles.flatMap((o) =>
    outlinesInPlan(plan, o, meshes).map(
      ({ corners, dashed }): Mark => ({
        kind: 'path',
        layer: 'OBSTACLES',
        points: corners.map(flat),
        closed: true,
        stroke: 'quiet',
        fill: 'ground',
        fillOpacity: 0.3,
        width: 0.7,
        ref: `obstacle:${o.id}`,
        ...(dashed ? { dash: [4, 3] as [number, number] } : {}),
      }),
    ),
  )

interface Outline {
  corners: Vec3[]
  /** Where it may stand besides, or what is known of it only roughly. */
  dashed: boolean
}

function outlinesInPlan(plan: Plan, o: Obstacle, meshes: MeshBounds): Outline[] {
  const plain = (corners: Vec3[]): Outline => ({ corners, dashed: false })
  switch (o.kind) {
    case 'ground':
    case 'water':
      return []
    case 'box':
      return [o.center, ...(o.travel ?? [])].map((c, i) => ({
        corners: square(boxCorners(o, c)),
        dashed: i > 0,
      }))
    case 'lane':
      return laneStrips(o).map(plain)
    case 'cross-frame':
      return frameStrips(plan, o).map(plain)
    case 'mesh':
      return boundsOutline(meshes[o.id]).map((corners) => ({ corners, dashed: true }))
  }
}

/** Of a model only the box around it is drawn; none where it was not read. */
function boundsOutline(bounds: MeshBounds[string] | undefined): Vec3[][] {
  if (!bounds) return []
  const [a, b] = [bounds.low, bounds.high]
  return [[a, [b[0], a[1], 0], b, [a[0], b[1], 0]]]
}

/** The four corners in plan out of a box's eight. */
const square = (corners: Vec3[]): Vec3[] => [corners[0]!, corners[1]!, corners[3]!, corners[2]!]

function loopsInPlan(girder: Girder, at: (s: number, o: number) => Point, input: PlanViewInput): Mark[] {
  const main = rowOfLine(input.plan, input.line)
  return girder.loops.flatMap((row) =>
    Array.from({ length: row.count }, (_, i): Mark => {
      const station = loopStation(row, i)
      const points = [at(station, row.offset - 0.07), at(station, row.offset + 0.07)]
      const stroke = row.id === main?.id ? 'ink' : 'quiet'
      return { kind: 'path', layer: 'LOOPS', points, stroke, width: 0.7, ref: `loop:${row.id}:${i}` }
    }),
  )
}

function tieBacksInPlan(input: PlanViewInput, girder: Girder, at: (s: number, o: number) => Point): Mark[] {
  return input.line.tieBacks.flatMap((t) => {
    const stanchion = input.line.stanchions.find((s) => s.id === t.stanchion)
    if (!stanchion) return []
    return [t.strapLoop, t.tensionerLoop].flatMap((loop): Mark[] => {
      const row = girder.loops.find((r) => r.id === loop.row)
      if (!row) return []
      const foot = at(loopStation(row, loop.index), row.offset)
      const points = [at(stanchion.station, stanchion.offset), foot]
      const ref = `tie-back:${t.id}`
      return [
        { kind: 'path', layer: 'TIE-BACKS', points, stroke: 'strap', width: 1.6, ref },
        { kind: 'dot', layer: 'TIE-BACKS', at: foot, radius: 2, fill: 'strap', ref },
      ]
    })
  })
}

function stanchionsInPlan(input: PlanViewInput, at: (s: number, o: number) => Point): Mark[] {
  const { plan, line } = input
  const rope = line.stanchions.map((s) => at(s.station, s.offset))
  const marks: Mark[] = []
  if (rope.length > 1) {
    marks.push({
      kind: 'path',
      layer: 'ROPE-INSTALLED',
      points: rope,
      stroke: 'ink',
      width: 1.2,
      ref: `line:${line.id}`,
    })
  }
  for (const s of line.stanchions) {
    const bracket = plan.parts.find((p) => p.id === s.bracket)
    const ref = `stanchion:${s.id}`
    if (bracket?.kind === 'bracket') {
      const half = bracket.tubeLength / 2
      const points = [at(s.station - half, s.offset), at(s.station + half, s.offset)]
      marks.push({ kind: 'path', layer: 'STANCHIONS', points, stroke: 'ink', width: 2.6, ref })
    }
    const point = at(s.station, s.offset)
    if (headHeight(plan, s) !== null) {
      marks.push({
        kind: 'dot',
        layer: 'STANCHIONS',
        at: point,
        radius: 2.6,
        fill: 'paper',
        stroke: 'ink',
        ref,
      })
    }
    marks.push({
      kind: 'text',
      layer: 'TEXT',
      at: point,
      text: s.id,
      bold: true,
      shift: [0, -7],
      dodge: 'up',
      ref,
    })
  }
  return marks
}

function spansInPlan(input: PlanViewInput, at: (s: number, o: number) => Point): Mark[] {
  const { line, units } = input
  const top = Math.max(1.2, ...line.stanchions.map((s) => s.offset + 0.6))
  return line.stanchions.slice(1).map((b, i): Mark => {
    const a = line.stanchions[i]!
    const text = formatLength(b.station - a.station, units)
    const [from, to] = [at(a.station, top), at(b.station, top)]
    return {
      kind: 'dimension',
      layer: 'DIMENSIONS',
      from,
      to,
      text,
      axis: 'across',
      away: 12,
      optional: true,
    }
  })
}

/** Closed shapes are cut to the drawing's window; the rest that lies outside is left out. */
function clipped(marks: Mark[], x: Window, y: Window): Mark[] {
  return marks.flatMap((m): Mark[] => {
    if (m.kind === 'path' && m.closed) {
      const points = clipPolygon(m.points, x, y)
      return points.length > 2 ? [{ ...m, points }] : []
    }
    const points = m.kind === 'path' ? m.points : m.kind === 'dimension' ? [m.from, m.to] : [m.at]
    return points.every(([px]) => px >= x.low && px <= x.high) ? [m] : []
  })
}

/** A polygon cut to a window, side by side (Sutherland and Hodgman 1974). */
export function clipPolygon(points: readonly Point[], x: Window, y: Window): Point[] {
  const sides: ((p: Point) => number)[] = [
    (p) => p[0] - x.low,
    (p) => x.high - p[0],
    (p) => p[1] - y.low,
    (p) => y.high - p[1],
  ]
  return sides.reduce<Point[]>((poly, inside) => clipSide(poly, inside), [...points])
}

function clipSide(points: Point[], inside: (p: Point) => number): Point[] {
  return points.flatMap((b, i) => {
    const a = points[(i + points.length - 1) % points.length]!
    const [da, db] = [inside(a), inside(b)]
    const share = da / (da - db)
    const cross: Point = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]
    if (db >= 0) return da >= 0 ? [b] : [cross, b]
    return da >= 0 ? [cross] : []
  })
}
