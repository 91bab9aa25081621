/**
 * The study in a worker. Two of these run: a quick one without falls in time, which answers while something is dragged, and
 * a whole one. Between lines it looks whether it was told to stop; lines that have not changed are kept.
 */
import * as Comlink from 'comlink'
import { modelIndex, type ReadModel } from '../../geometry/gaps'
import type { Room } from '../../geometry/room'
import type { Skin } from '../../geometry/room/skin/skin'
import type { Plan } from '../../plan/types'
import type { Explained } from '../../solver/explain'
import { type ClashDetail, type ClashPlace, clashDetail } from '../../study/clash-detail'
import type { LineDetail } from '../../study/details'
import { explainFinding } from '../../study/explain'
import { type LineStudy, studyLine } from '../../study/line-study'
import type { LineResults, Results } from '../../study/results'
import { keepSkins, PICTURE_TOLERANCE } from '../../study/skins'
import { type Study, type StudyOptions, study } from '../../study/study'
import { timeFallsOf } from '../../study/time-falls'
import { lineKey } from './line-key'
import { type Sent, sender } from './unchanged'

export interface Studied {
  results: Results
  details: LineDetail[]
}

/** The same on its way to the window: of lines, only those that have changed since the last time. */
export interface StudiedSent {
  results: Omit<Results, 'lines'> & { lines: Sent<LineResults>[] }
  details: Sent<LineDetail>[]
}

export interface StudyJob {
  withoutTime: boolean
}

/** Model files by name: handed over once, indexed once. */
const models = new Map<string, ReadModel>()

const kept = new Map<string, { key: string; study: LineStudy }>()
let newest = 0
let rooms: Room[] = []
let last: Study | null = null
const skinsOf = keepSkins()
const sendLines = sender<LineResults>((line) => line.id)
const sendDetails = sender<LineDetail>((detail) => detail.id)
const sendSkins = sender<Skin>((skin) => skin.line)

/** Lets messages in: a stop that waits is heard before the next line. */
const breathe = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = () => {
      port1.close()
      resolve()
    }
    port2.postMessage(null)
  })

const noTime = (): string => 'the falls in time are still to be computed'

/** Studies a plan; null where a newer call or `stop` came in between. */
async function run(
  plan: Plan,
  job: StudyJob,
  progress: (done: number, what: string) => void,
): Promise<StudiedSent | null> {
  const mine = ++newest
  const timeFalls = job.withoutTime ? noTime : timeFallsOf({})
  for (const [i, line] of plan.lines.entries()) {
    const key = lineKey(plan, line)
    if (kept.get(line.id)?.key === key) continue
    progress(i / plan.lines.length, line.name || line.id)
    await breathe()
    if (mine !== newest) return null
    kept.set(line.id, { key, study: studyLine(plan, line, timeFalls) })
  }
  for (const id of kept.keys()) if (!plan.lines.some((l) => l.id === id)) kept.delete(id)
  await breathe()
  if (mine !== newest) return null
  indexModels(plan, progress)
  const known = new Map([...kept].map(([id, entry]) => [id, entry.study]))
  const options: StudyOptions = { withoutTime: job.withoutTime, known }
  const done = study(plan, { ...options, models })
  rooms = done.obstacles.rooms
  last = done
  const { results, details } = done
  return { results: { ...results, lines: sendLines(results.lines) }, details: sendDetails(details) }
}

/** Keeps a model file for the studies to come; null lets it go. */
function keepModel(file: string, read: ReadModel | null): void {
  if (read) models.set(file, read)
  else models.delete(file)
}

/** Indexes what the plan places and is not indexed yet: a large model takes seconds. */
function indexModels(plan: Plan, progress: (done: number, what: string) => void): void {
  for (const o of plan.obstacles) {
    const read = o.kind === 'mesh' ? models.get(o.file) : undefined
    if (o.kind !== 'mesh' || !read?.ok || read.value.triangles.length < 9) continue
    modelIndex(read.value.triangles, o.upAxis, (share) => progress(share, `indexing ${o.name}`))
  }
}

/** The room cut at a clash, and the fall that governs there. */
function clash(at: ClashPlace): ClashDetail | null {
  const room = rooms.find((r) => r.line === at.line)
  return clashDetail(kept.get(at.line)?.study, room, at)
}

/** The sum behind a finding of the last study; null where that study has no such finding. */
function why(rule: string, subject: string): Explained | null {
  const finding = last?.results.findings.find((f) => f.rule === rule && f.subject === subject)
  return last && finding ? explainFinding(last, finding) : null
}

const worker = {
  run,
  clash,
  why,
  keepModel,
  /** The rooms of the last study as surfaces for the picture; apart from `run`, so that figures need not wait. */
  skins: (coarse: boolean): Sent<Skin>[] =>
    sendSkins(skinsOf(rooms, PICTURE_TOLERANCE[coarse ? 'drag' : 'rest'])),
  stop: (): void => {
    newest++
  },
}

export type StudyWorker = typeof worker

Comlink.expose(worker)
