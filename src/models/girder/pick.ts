/** A beam of a model becomes a girder: ends and top from its geometry, widths from cuts through it. */
import type { Girder, Vec3 } from '../../plan/types'
import { longAxis } from './axis'
import { type CutFigures, cutAt, measureCut, type PlanFrame, uOf } from './cut'

export type Picked =
  | { ok: true; value: { girder: Omit<Girder, 'id'>; notes: string[] } }
  | { ok: false; why: string }

/** Shares of the length at which the beam is cut: away from its ends, which may be notched or skewed. */
const CUTS = [0.15, 0.3, 0.5, 0.7, 0.85]
/** Webs thinner than this are steel, m: no concrete beam's is. */
const STEEL_WEB = 0.06

/** Tops narrower than this carry no stanchion, m: a tube, or a beam on edge. */
const NARROW = 0.05

/** A plate or a width below this is told as this, m: a plan holds no section of nothing. */
const LEAST_SIZE = 0.001

/** The girder that a beam's triangles (metres, z up) make; why not, where they make none. */
export function girderFromBeam(name: string, triangles: Float32Array): Picked {
  if (triangles.length < 9) return { ok: false, why: `${name} has no shape` }
  const { centre, axis } = longAxis(triangles)
  const flat = Math.hypot(axis[0], axis[1])
  if (flat < 0.5) return { ok: false, why: `${name} stands upright: a girder lies` }
  const frame: PlanFrame = { origin: centre, along: [axis[0] / flat, axis[1] / flat] }
  // Start to end runs towards growing x, or y where it lies across: the same beam is always the same way round.
  if (frame.along[0] < -1e-9 || (Math.abs(frame.along[0]) <= 1e-9 && frame.along[1] < 0)) {
    frame.along = [-frame.along[0], -frame.along[1]]
  }
  const [from, to] = rangeOf(triangles, frame)
  if (to - from < 0.5) return { ok: false, why: `${name} is shorter than half a metre` }
  const cuts = CUTS.map((share) => {
    const u = from + (to - from) * share
    return { u, figures: measureCut(cutAt(triangles, frame, u)) }
  }).filter((c): c is { u: number; figures: CutFigures } => c.figures !== null)
  if (cuts.length < 3) return { ok: false, why: `${name} could not be cut: its surface is open or empty` }
  return { ok: true, value: { girder: built(name, frame, from, to, cuts), notes: notesOf(cuts) } }
}

function rangeOf(t: Float32Array, frame: PlanFrame): [number, number] {
  let [from, to] = [Infinity, -Infinity]
  for (let i = 0; i < t.length; i += 3) {
    const u = uOf(frame, t[i]!, t[i + 1]!)
    from = Math.min(from, u)
    to = Math.max(to, u)
  }
  return [from, to]
}

interface Cut {
  u: number
  figures: CutFigures
}

function built(name: string, frame: PlanFrame, from: number, to: number, cuts: Cut[]): Omit<Girder, 'id'> {
  const at = (u: number): Vec3 => {
    const v = along(cuts, u, (f) => f.middle)
    const z = along(cuts, u, (f) => f.top)
    const [ax, ay] = frame.along
    return [frame.origin[0] + u * ax - v * ay, frame.origin[1] + u * ay + v * ax, z].map(toMillimetre) as Vec3
  }
  const of = (figure: (f: CutFigures) => number): number =>
    Math.max(LEAST_SIZE, toMillimetre(median(cuts.map((c) => figure(c.figures)))))
  const webThickness = of((f) => f.webThickness)
  return {
    name,
    start: at(from),
    end: at(to),
    material: webThickness < STEEL_WEB ? 'steel' : 'concrete',
    section: {
      topWidth: of((f) => f.topWidth),
      topThickness: of((f) => f.topThickness),
      webThickness,
      bottomWidth: of((f) => f.bottomWidth),
      bottomThickness: of((f) => f.bottomThickness),
      depth: of((f) => f.top - f.bottom),
    },
    loops: [],
  }
}

const toMillimetre = (x: number): number => Math.round(x * 1000) / 1000

/** A figure at u, on the straight line through the first and the last cut. */
function along(cuts: Cut[], u: number, figure: (f: CutFigures) => number): number {
  const [a, b] = [cuts[0]!, cuts[cuts.length - 1]!]
  const [fa, fb] = [figure(a.figures), figure(b.figures)]
  return fa + ((u - a.u) / (b.u - a.u)) * (fb - fa)
}

const median = (values: number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!

function notesOf(cuts: Cut[]): string[] {
  const spread = (figure: (f: CutFigures) => number): number => {
    const values = cuts.map((c) => figure(c.figures))
    return Math.max(...values) - Math.min(...values)
  }
  const bow = (figure: (f: CutFigures) => number): number =>
    Math.max(...cuts.map((c) => Math.abs(figure(c.figures) - along(cuts, c.u, figure))))
  const notes: string[] = []
  const top = median(cuts.map((c) => c.figures.topWidth))
  if (top < NARROW) {
    notes.push(
      `its top is round or sharp, ${Math.round(top * 1000)} mm wide: give the width that carries a stanchion`,
    )
  }
  if (spread((f) => f.top - f.bottom) > 0.02) notes.push('its depth varies: the middle value was taken')
  if (spread((f) => f.topWidth) > 0.02) notes.push('its top width varies: the middle value was taken')
  if (bow((f) => f.middle) > 0.02) notes.push('it is curved in plan: the girder is straight from end to end')
  if (bow((f) => f.top) > 0.02) notes.push('its top is cambered: the girder is straight from end to end')
  return notes
}
