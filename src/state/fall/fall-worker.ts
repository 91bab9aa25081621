/** Drops workers in a thread of its own: a fall takes a second or two, and the window goes on meanwhile. */
import * as Comlink from 'comlink'
import type { ReadModel } from '../../geometry/gaps'
import type { Plan } from '../../plan/types'
import { type DropRequest, dropWorkers } from '../../study/drop'
import { seriesOf } from '../../study/drop/series'
import type { Dropped } from './fall-store'

export type DropReply = { ok: true; value: Omit<Dropped, 'plan'> } | { ok: false; why: string }

/** Model files by name. */
const models = new Map<string, ReadModel>()

function drop(plan: Plan, request: DropRequest, progress: (done: number) => void): DropReply {
  const got = dropWorkers(plan, request, { progress, models })
  if (!got.ok) return got
  const series = seriesOf(got.value)
  if (!series) return { ok: false, why: 'the fall left no history' }
  return Comlink.transfer(
    { ok: true, value: { study: got.value, series } } as const,
    buffersOf(got.value.fall.history),
  )
}

/** Memory that is handed over rather than copied. */
const buffersOf = (history: object | null): ArrayBuffer[] =>
  Object.values(history ?? {}).flatMap((v) => (ArrayBuffer.isView(v) ? [v.buffer as ArrayBuffer] : []))

/** Keeps a model file for the falls to come; null lets it go. */
function keepModel(file: string, read: ReadModel | null): void {
  if (read) models.set(file, read)
  else models.delete(file)
}

const worker = { drop, keepModel }

export type FallWorker = typeof worker

Comlink.expose(worker)
