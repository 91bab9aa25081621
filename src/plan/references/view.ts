/**
 * What of a document can be read, piece by piece. A fault in one stanchion must not hide what is wrong with the next
 * line: each piece that holds by itself is checked against the others, and the rest is passed over.
 */
import type { z } from 'zod'
import type { Path } from '../fault'
import { lineSchema, stanchionSchema, tieBackSchema, workerSchema } from '../schema/line'
import { partSchema } from '../schema/parts'
import { recordSchema } from '../schema/records'
import { deckSchema, girderSchema, loopRowSchema, obstacleSchema } from '../schema/site'
import type {
  Deck,
  Girder,
  Line,
  LoopRow,
  Obstacle,
  Part,
  PlanRecord,
  Stanchion,
  TieBack,
  Worker,
} from '../types'

export interface Entry<T> {
  item: T
  path: Path
}

export interface LineView {
  /** Fields that could be read, each by itself. */
  raw: Record<string, unknown>
  /** The whole line, where all of it could be read. */
  line: Line | null
  stanchions: Entry<Stanchion>[]
  /** All stanchions could be read, so that their order means something. */
  complete: boolean
  tieBacks: Entry<TieBack>[]
  path: Path
}

export interface PlanView {
  girders: Entry<Girder>[]
  loopRows: Entry<LoopRow & { girder: string }>[]
  decks: Entry<Deck>[]
  lines: LineView[]
  workers: Entry<Worker>[]
  obstacles: Entry<Obstacle>[]
  parts: Entry<Part>[]
  records: Entry<PlanRecord>[]
  /** Kind of whatever bears an id, readable or not: `girder`, `line`, or the kind of a part. */
  named: Map<string, string>
}

/** The view of a document that may be anything. */
export function viewOf(root: unknown): PlanView {
  const top = asObject(root)
  const view: PlanView = {
    girders: readable(top.girders, ['girders'], girderSchema),
    loopRows: [],
    decks: readable(top.decks, ['decks'], deckSchema),
    lines: items(top.lines).map((raw, i) => lineView(asObject(raw), ['lines', i])),
    workers: readable(top.workers, ['workers'], workerSchema),
    obstacles: readable(top.obstacles, ['obstacles'], obstacleSchema),
    parts: readable(top.parts, ['parts'], partSchema),
    records: readable(top.records, ['records'], recordSchema),
    named: named(top),
  }
  items(top.girders).forEach((raw, i) => {
    const girder = asObject(raw)
    for (const row of readable(girder.loops, ['girders', i, 'loops'], loopRowSchema)) {
      view.loopRows.push({ item: { ...row.item, girder: String(girder.id) }, path: row.path })
    }
  })
  return view
}

function lineView(raw: Record<string, unknown>, path: Path): LineView {
  const stanchions = readable(raw.stanchions, [...path, 'stanchions'], stanchionSchema)
  return {
    raw,
    line: lineSchema.safeParse(raw).success ? (raw as unknown as Line) : null,
    stanchions,
    complete: Array.isArray(raw.stanchions) && stanchions.length === raw.stanchions.length,
    tieBacks: readable(raw.tieBacks, [...path, 'tieBacks'], tieBackSchema),
    path,
  }
}

function readable<T>(list: unknown, base: Path, schema: z.ZodType<T>): Entry<T>[] {
  const found: Entry<T>[] = []
  items(list).forEach((raw, i) => {
    const read = schema.safeParse(raw)
    if (read.success) found.push({ item: read.data, path: [...base, i] })
  })
  return found
}

function named(top: Record<string, unknown>): Map<string, string> {
  const kinds = new Map<string, string>()
  const add = (list: unknown, kind: string | null): void => {
    for (const raw of items(list)) {
      const item = asObject(raw)
      if (typeof item.id === 'string') kinds.set(item.id, kind ?? String(item.kind))
    }
  }
  add(top.girders, 'girder')
  add(top.decks, 'deck')
  add(top.lines, 'line')
  add(top.workers, 'worker')
  add(top.obstacles, 'obstacle')
  add(top.parts, null)
  return kinds
}

export function items(list: unknown): unknown[] {
  return Array.isArray(list) ? list : []
}

export function asObject(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {}
}
