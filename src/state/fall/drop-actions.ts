/** Who falls, where and how: every change is computed at once. */
import { girderFrame, stationOf, topPoint } from '../../geometry/girder'
import type { Line, Plan, Vec3, Worker } from '../../plan/types'
import type { Corner } from '../../solver/model'
import type { Drop, DropStudy } from '../../study/drop'
import { lookAtPoint } from '../actions'
import { stillWanted } from '../motion'
import { app } from '../store'
import { computeFall, stopFall } from './fall-client'
import { type FallState, fallStore, playhead } from './fall-store'
import { play, seek } from './player'

const set = fallStore.setState
const get = fallStore.getState

export const crewOf = (plan: Plan, line: string | null): Worker[] =>
  plan.workers.filter((w) => w.line === line)

const lineOf = (id: string | null): Line | undefined => app.getState().plan.lines.find((l) => l.id === id)

/** First and last station of a line, m. */
export const reachOf = (line: Line): { from: number; to: number } => ({
  from: line.stanchions[0]?.station ?? 0,
  to: line.stanchions.at(-1)?.station ?? 0,
})

const onLine = (line: Line, station: number): number => {
  const { from, to } = reachOf(line)
  return Math.min(to, Math.max(from, station))
}

/** Middle of the line's first span, m. */
const firstMiddle = (line: Line): number =>
  ((line.stanchions[0]?.station ?? 0) + (line.stanchions[1]?.station ?? 0)) / 2

/** The line's first worker, at mid-span; nobody where the line has no crew. */
function firstDrop(id: string): Drop[] {
  const line = lineOf(id)
  const first = crewOf(app.getState().plan, id)[0]
  return line && first ? [{ worker: first.id, station: firstMiddle(line), delay: 0 }] : []
}

/** Takes another line in hand: its first worker, mid-span, at its own grip; what was dropped before is let go. */
export function chooseLine(id: string): void {
  const line = lineOf(id)
  if (!line || get().line === id) return
  stopFall()
  const drops = firstDrop(id)
  const corner = { ...get().corner, grip: line.grip ?? ('sliding' as const) }
  set({ line: id, drops, active: 0, corner, dropped: null, status: 'none', why: null, playing: false })
}

/** A click on a line: the worker in hand falls there, or with `more` another one too. */
export function dropHere(line: string, station: number, more = false): void {
  chooseLine(line)
  if (more && get().drops.length > 0 && get().dropped) addDrop(station)
  else changeDrop(get().active, { station })
}

/** The same at a point of the site. */
export function dropAtPoint(line: string, point: Vec3, more = false): void {
  const { plan } = app.getState()
  const girder = plan.girders.find((g) => g.id === lineOf(line)?.girder)
  if (girder) dropHere(line, stationOf(girderFrame(girder), point).station, more)
}

/** Changes one of those who fall. */
export function changeDrop(index: number, change: Partial<Drop>): void {
  const line = lineOf(get().line)
  if (!line) return
  const drops = get().drops.map((d, i) => (i === index ? { ...d, ...change } : d))
  set({ drops: drops.map((d) => ({ ...d, station: onLine(line, d.station) })) })
  void compute()
}

/** One more: the next of the crew who does not fall yet, 2 m on from the last. */
export function addDrop(station?: number): void {
  const line = lineOf(get().line)
  const { drops } = get()
  const crew = crewOf(app.getState().plan, get().line)
  const next = crew.find((w) => !drops.some((d) => d.worker === w.id)) ?? crew[0]
  if (!line || !next) return
  const at = onLine(line, station ?? (drops.at(-1)?.station ?? firstMiddle(line)) + 2)
  set({ drops: [...drops, { worker: next.id, station: at, delay: 0 }], active: drops.length })
  void compute()
}

export function removeDrop(index: number): void {
  const drops = get().drops.filter((_, i) => i !== index)
  set({ drops, active: Math.max(0, Math.min(get().active, drops.length - 1)) })
  if (drops.length > 0) void compute()
}

export function setOrder(order: FallState['order']): void {
  set({ order })
  void compute()
}

export function setCorner(change: Partial<Corner>): void {
  set({ corner: { ...get().corner, ...change } })
  void compute()
}

export function cancelFall(): void {
  stopFall()
  set({ status: 'cancelled', progress: 0 })
}

/** Computes what is asked; plays it from standing when it is there, or shows its lowest point to who wants less motion. */
export async function compute(): Promise<void> {
  const { plan } = app.getState()
  const { line, drops, order, corner } = get()
  if (!line || drops.length === 0) return
  set({ status: 'running', progress: 0, why: null, playing: false })
  const request = {
    line,
    order,
    corner,
    drops: order === 'in-turn' ? drops.map((d) => ({ ...d, delay: 0 })) : drops,
  }
  const reply = await computeFall(plan, request, (progress) => set({ progress }))
  if (!reply) return
  if (!reply.ok) {
    set({ status: 'failed', why: reply.why, dropped: null })
    return
  }
  set({ status: 'done', progress: 1, dropped: { ...reply.value, plan } })
  playhead.set(0)
  lookAtFall()
  if (stillWanted()) seek(lowestAt(reply.value.study))
  else play()
}

/** When the first of them is lowest, s. */
const lowestAt = ({ workers }: DropStudy): number =>
  Math.min(...workers.flatMap((w) => w.moments.filter((m) => m.what === 'lowest').map((m) => m.at)))

/** The camera goes to where the first one falls. */
function lookAtFall(): void {
  const { drops, dropped } = get()
  const { plan } = app.getState()
  const girder = plan.girders.find((g) => g.id === lineOf(get().line)?.girder)
  const [first] = drops
  if (!girder || !first || !dropped) return
  const [x, y, z] = topPoint(girderFrame(girder), first.station, 0)
  lookAtPoint([x, y, z - 1])
}

/** What the window no longer has can not fall. */
export function pruneFall(plan: Plan): void {
  const { line, drops } = get()
  if (!line) return
  if (!plan.lines.some((l) => l.id === line)) {
    stopFall()
    set({ line: null, drops: [], active: 0, dropped: null, status: 'none', playing: false })
    return
  }
  const kept = drops.filter((d) => plan.workers.some((w) => w.id === d.worker && w.line === line))
  if (kept.length !== drops.length) set({ drops: kept, active: 0 })
  if (kept.length === 0) set({ drops: firstDrop(line), active: 0 })
}
