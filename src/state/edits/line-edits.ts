/** Whole lines: copy to other girders, with what no longer fits told in words; crew of a new line. */
import { findLoop, rowUnder } from '../../geometry/loops'
import { usedIds } from '../../plan/ids'
import type { Girder, Line, LoopRef, Plan, TieBack } from '../../plan/types'
import { copied } from './copied'
import { gapStations, girderLength, nearest, tidy } from './gaps'
import { freeName, newId } from './ids'
import { proposeFeet } from './propose-feet'
import { firstPart } from './propose-line'

export interface CopyReport {
  girder: string
  line: string | null
  /** What could not be taken over as it was, one sentence each; empty where all of it fits. */
  misfits: string[]
}

/** Copies a line to another girder: stations kept as near as its loops let them, tie-backs on the like loops. */
export function copyLine(plan: Plan, lineId: string, girderId: string): CopyReport {
  const line = plan.lines.find((l) => l.id === lineId)
  const to = plan.girders.find((g) => g.id === girderId)
  if (!line || !to) return { girder: girderId, line: null, misfits: ['There is no such girder or line.'] }
  const misfits: string[] = []
  const taken = usedIds(plan)
  const stations = copiedStations(line, to, misfits)
  if (!stations) return { girder: girderId, line: null, misfits }
  const copy = bareCopy(plan, line, to, stations, taken)
  copy.tieBacks = line.tieBacks.flatMap((t) => copiedTieBack(plan, line, copy, to, t, taken, misfits))
  plan.lines.push(copy)
  for (const worker of plan.workers.filter((w) => w.line === line.id)) {
    plan.workers.push({ ...worker, id: newId(plan, 'W', taken), line: copy.id })
  }
  return { girder: girderId, line: copy.id, misfits }
}

function bareCopy(plan: Plan, line: Line, to: Girder, stations: number[], taken: Set<string>): Line {
  const offset = to.loops[0]?.offset ?? 0
  const stanchions = line.stanchions.map((s, i) => ({
    ...s,
    id: newId(plan, 'S', taken),
    station: stations[i] ?? s.station,
    offset: rowUnder(to, s.offset) ? s.offset : offset,
  }))
  const name = freeName(`Line ${plan.lines.length + 1}`, plan.lines)
  return {
    ...copied(line),
    id: newId(plan, 'L', taken),
    name,
    girder: to.id,
    stanchions,
    tieBacks: [],
  }
}

function copiedStations(line: Line, to: Girder, misfits: string[]): number[] | null {
  const length = girderLength(to)
  const row = rowUnder(to, line.stanchions[0]?.offset ?? 0) ?? to.loops[0] ?? null
  if (!row) misfits.push('The girder has no loops for the brackets.')
  const gaps = gapStations(to, row)
  const stations = line.stanchions.map((s) => {
    const station = tidy(nearest(gaps, Math.min(length, s.station)))
    if (s.station > length) misfits.push(`${s.id} would stand past the end of the girder and was moved in.`)
    else if (Math.abs(station - s.station) > 0.005) misfits.push(`${s.id} moved to the nearest loop gap.`)
    return station
  })
  const apart = stations.every((s, i) => i === 0 || s - (stations[i - 1] ?? 0) > 0.05)
  if (!apart) misfits.push(`The girder is too short for ${line.name || line.id}: not copied.`)
  return apart ? stations : null
}

function copiedTieBack(
  plan: Plan,
  line: Line,
  copy: Line,
  to: Girder,
  tieBack: TieBack,
  taken: Set<string>,
  misfits: string[],
): TieBack[] {
  const index = line.stanchions.findIndex((s) => s.id === tieBack.stanchion)
  const post = copy.stanchions[index]
  const feet = post && proposeFeet(plan, to, post, index === 0 ? -1 : 1)
  if (!post || !feet) {
    misfits.push(`${tieBack.id} finds no two loops far enough from ${tieBack.stanchion}: no tie-back there.`)
    return []
  }
  if (!sameLoops(to, feet.strapLoop, tieBack.strapLoop)) misfits.push(`${tieBack.id} takes other loops.`)
  return [{ id: newId(plan, 'T', taken), stanchion: post.id, part: tieBack.part, ...feet }]
}

const sameLoops = (to: Girder, a: LoopRef, b: LoopRef): boolean =>
  findLoop(to, a) !== null && a.index === b.index

/** A worker for a line, like the plan's last one. */
export function addWorker(plan: Plan, lineId: string): string | null {
  if (!plan.lines.some((l) => l.id === lineId)) return null
  const last = plan.workers.at(-1)
  const usual = {
    mass: 100,
    dRingHeight: 1.5,
    harnessStretch: 0.3,
    connector: firstPart(plan, 'connector').id,
  }
  const { id: _i, name: _n, line: _l, ...like } = last ?? { id: '', name: '', line: '', ...usual }
  const id = newId(plan, 'W')
  plan.workers.push({
    id,
    name: freeName(`Worker ${plan.workers.length + 1}`, plan.workers),
    line: lineId,
    ...like,
  })
  return id
}
