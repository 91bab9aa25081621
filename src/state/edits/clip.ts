/** What the clipboard holds: a valid little plan of the copied things and the parts that they use. */
import { usedIds } from '../../plan/ids'
import { readPlan } from '../../plan/read'
import type { Line, Plan } from '../../plan/types'
import { partIdsOf } from '../../plan/uses'
import type { Ref } from '../refs'
import { freeName, newId } from './ids'
import { keepPart } from './propose-line'

/** A plan of its own: girders carry the copied lines, everything else hangs on them. */
export interface Clip {
  fallroom: 'clip'
  plan: Plan
  /** What was copied; the rest of `plan` is only there to make it whole. */
  refs: Ref[]
}

export function clipOf(plan: Plan, refs: readonly Ref[]): Clip | null {
  const kept = refs.filter((r) => ['girder', 'line', 'deck', 'worker', 'obstacle'].includes(r.kind))
  if (kept.length === 0) return null
  const ids = new Set(kept.map((r) => r.id))
  const workers = plan.workers.filter((w) => ids.has(w.id) || ids.has(w.line))
  const lines = plan.lines.filter((l) => ids.has(l.id) || workers.some((w) => w.line === l.id))
  const girders = plan.girders.filter((g) => ids.has(g.id) || lines.some((l) => l.girder === g.id))
  const { site: _s, notes: _n, records: _r, ...rest } = plan
  const obstacles = plan.obstacles.filter((o) => ids.has(o.id) && o.kind !== 'cross-frame')
  const decks = (plan.decks ?? []).filter((d) => ids.has(d.id))
  return { fallroom: 'clip', plan: { ...rest, girders, lines, workers, obstacles, decks }, refs: kept }
}

/** Reads a clip from text; null for anything else, however it is shaped. */
export function readClip(text: string): Clip | null {
  if (!text.startsWith('{"fallroom":"clip"') || text.length > 8_000_000) return null
  try {
    const clip = JSON.parse(text) as Clip
    const read = readPlan(JSON.stringify(clip.plan))
    const refs = Array.isArray(clip.refs) ? clip.refs.filter((r) => typeof r?.id === 'string') : []
    return read.ok && refs.length > 0 ? { fallroom: 'clip', plan: read.plan, refs } : null
  } catch {
    return null
  }
}

/** Puts copies into a plan with new ids; lines go to the copied girder, or to the girder of that id, or to the first. */
export function pasteClip(plan: Plan, clip: Clip, misfits: string[]): Ref[] {
  const taken = usedIds(plan)
  const wanted = new Set(clip.refs.map((r) => r.id))
  const girders = new Map<string, string>()
  const rows = new Map<string, string>()
  const lines = new Map<string, string>()
  const made: Ref[] = []
  for (const girder of clip.plan.girders.filter((g) => wanted.has(g.id))) {
    const id = newId(plan, 'G', taken)
    girders.set(girder.id, id)
    const loops = girder.loops.map((row) => ({ ...row, id: renamed(rows, row.id, newId(plan, 'R', taken)) }))
    plan.girders.push({ ...girder, id, loops, name: freeName(girder.name, plan.girders) })
    made.push({ kind: 'girder', id })
  }
  for (const line of clip.plan.lines.filter((l) => wanted.has(l.id) || girders.has(l.girder))) {
    const id = pasteLine(plan, line, { girders, rows, taken }, misfits)
    if (!id) continue
    lines.set(line.id, id)
    made.push({ kind: 'line', id })
  }
  for (const worker of clip.plan.workers) {
    const line = lines.get(worker.line) ?? plan.lines.find((l) => l.id === worker.line)?.id
    if (!line || !(wanted.has(worker.id) || lines.has(worker.line))) continue
    const id = newId(plan, 'W', taken)
    plan.workers.push({ ...worker, id, line, name: freeName(worker.name, plan.workers) })
    if (wanted.has(worker.id)) made.push({ kind: 'worker', id })
  }
  for (const obstacle of clip.plan.obstacles) {
    const id = newId(plan, 'O', taken)
    plan.obstacles.push({ ...obstacle, id, name: freeName(obstacle.name, plan.obstacles) })
    made.push({ kind: 'obstacle', id })
  }
  for (const deck of clip.plan.decks ?? []) {
    const id = newId(plan, 'D', taken)
    plan.decks = [...(plan.decks ?? []), { ...deck, id, name: freeName(deck.name, plan.decks ?? []) }]
    made.push({ kind: 'deck', id })
  }
  const used = partIdsOf(clip.plan)
  for (const part of clip.plan.parts) if (used.has(part.id)) keepPart(plan, part)
  return made
}

const renamed = (map: Map<string, string>, from: string, to: string): string => {
  map.set(from, to)
  return to
}

interface Renames {
  girders: Map<string, string>
  rows: Map<string, string>
  taken: Set<string>
}

function pasteLine(plan: Plan, line: Line, renames: Renames, misfits: string[]): string | null {
  const girder = renames.girders.get(line.girder) ?? plan.girders.find((g) => g.id === line.girder)?.id
  const target = plan.girders.find((g) => g.id === girder) ?? plan.girders[0]
  if (!target) {
    misfits.push(`${line.name || line.id} needs a girder: there is none.`)
    return null
  }
  const posts = new Map<string, string>()
  const stanchions = line.stanchions.map((s) => ({
    ...s,
    id: renamed(posts, s.id, newId(plan, 'S', renames.taken)),
  }))
  const tieBacks = line.tieBacks.flatMap((t) => {
    const loops = [t.strapLoop, t.tensionerLoop].map((l) => ({ ...l, row: renames.rows.get(l.row) ?? l.row }))
    const fits = loops.every((l) => target.loops.some((r) => r.id === l.row && l.index < r.count))
    const [strapLoop, tensionerLoop] = loops
    if (!fits || !strapLoop || !tensionerLoop) {
      misfits.push(`${t.id} finds no such loops on ${target.name}: no tie-back there.`)
      return []
    }
    const stanchion = posts.get(t.stanchion) ?? t.stanchion
    return [{ ...t, id: newId(plan, 'T', renames.taken), stanchion, strapLoop, tensionerLoop }]
  })
  const id = newId(plan, 'L', renames.taken)
  const name = freeName(line.name, plan.lines)
  plan.lines.push({ ...line, id, name, girder: target.id, stanchions, tieBacks })
  return id
}
