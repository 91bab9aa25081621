/** The map of where one can tie off, for the scene: patches of walking surface, in reach of some line or of none. */
import { create } from 'zustand'
import { girderFrame } from '../../geometry/girder'
import { headHeight, lineGeometry } from '../../geometry/line'
import { deckPieces, topElevation, topOutline } from '../../geometry/room/surface'
import { type TieOffCell, type TieOffLine, tieOffMap } from '../../geometry/room/tie-off'
import type { Plan, Vec2 } from '../../plan/types'
import { once } from '../derived'

export const tieOffStore = create<{ shown: boolean }>()(() => ({ shown: false }))

export const showTieOff = (shown: boolean): void => tieOffStore.setState({ shown })

export interface ReachArea {
  triangles: Float32Array
  reached: boolean
}

/** Side of a square of the map, m. */
const STEP = 0.25
/** The map lies this far over the surface, m, so that it can be seen. */
const OVER = 0.01

function linesOf(plan: Plan): TieOffLine[] {
  return plan.lines.flatMap((line) => {
    const girder = plan.girders.find((g) => g.id === line.girder)
    const heights = line.stanchions.map((s) => headHeight(plan, s))
    if (!girder || heights.some((h) => h === null)) return []
    const known = heights.map((h) => h ?? 0)
    const workers = plan.workers.flatMap((w) => {
      const part = plan.parts.find((p) => p.id === w.connector)
      if (w.line !== line.id || part?.kind !== 'connector') return []
      const { harnessStretch, dRingHeight } = w
      return [{ id: w.id, type: part.type, length: part.length, harnessStretch, dRingHeight }]
    })
    return [
      { line: line.id, heads: lineGeometry(girder, line, known).heads, height: Math.min(...known), workers },
    ]
  })
}

interface Ground {
  pieces: Vec2[][]
  z: (p: Vec2) => number
}

function groundsOf(plan: Plan): Ground[] {
  return [
    ...plan.girders.map((g) => {
      const frame = girderFrame(g)
      return { pieces: [topOutline(g)], z: (p: Vec2) => topElevation(frame, p) }
    }),
    ...(plan.decks ?? []).map((d) => ({ pieces: deckPieces(d), z: () => d.elevation })),
  ]
}

/** All surfaces of the plan in two areas: in reach of a line, and not. */
export const reachAreas = once((plan: Plan): ReachArea[] => {
  const lines = linesOf(plan)
  const [reached, rest]: [number[], number[]] = [[], []]
  for (const { pieces, z } of groundsOf(plan)) {
    for (const cell of tieOffMap(
      pieces.map((outline) => ({ outline })),
      lines,
      STEP,
    )) {
      square(cell, z, cell.lines.length > 0 ? reached : rest)
    }
  }
  return [
    { triangles: Float32Array.from(reached), reached: true },
    { triangles: Float32Array.from(rest), reached: false },
  ].filter((a) => a.triangles.length > 0)
})

function square({ at, half }: TieOffCell, z: (p: Vec2) => number, into: number[]): void {
  const corner = (i: number, k: number): number[] => {
    const p: Vec2 = [at[0] + i * half, at[1] + k * half]
    return [p[0], p[1], z(p) + OVER]
  }
  const [a, b, c, d] = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]
  into.push(...a, ...b, ...c, ...a, ...c, ...d)
}

/** Share of the walking surfaces that is in reach of a line, 0 to 1; null without surfaces. */
export function coveredShare(plan: Plan): number | null {
  const areas = reachAreas(plan)
  const all = areas.reduce((sum, a) => sum + a.triangles.length, 0)
  const reached = areas.find((a) => a.reached)?.triangles.length ?? 0
  return all > 0 ? reached / all : null
}
