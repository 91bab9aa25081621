import { type Fault, fault, type Path } from '../fault'
import type { Girder, LoopRef, PartKind, Stanchion, TieBack } from '../types'
import { type Entry, items, type LineView, type PlanView } from './view'

/** m; two stanchions nearer than this stand at the same place. */
const SAME_STATION = 1e-3

/** What is wrong with how a line hangs together and what it refers to. */
export function lineFaults(view: PlanView): Fault[] {
  return view.lines.flatMap((line) => [
    ...referenceFaults(line, view),
    ...(line.complete ? orderFaults(line) : []),
    ...stationFaults(line, view),
    ...line.tieBacks.flatMap((t) => tieBackFaults(t, line, view)),
  ])
}

function referenceFaults({ raw, stanchions, path }: LineView, view: PlanView): Fault[] {
  const wants = (id: unknown, kind: string, at: Path): Fault[] => wrongKind(view, id, kind, at)
  return [
    ...wants(raw.girder, 'girder', [...path, 'girder']),
    ...wants(raw.wireRope, 'wire-rope', [...path, 'wireRope']),
    ...(raw.absorber === null ? [] : wants(raw.absorber, 'line-absorber', [...path, 'absorber'])),
    ...items(raw.hardware).flatMap((id, i) => wants(id, 'hardware', [...path, 'hardware', i])),
    ...stanchions.flatMap((s) => wants(s.item.part, 'stanchion', [...s.path, 'part'])),
    ...stanchions.flatMap((s) => wants(s.item.bracket, 'bracket', [...s.path, 'bracket'])),
  ]
}

const KIND_WORDS: Record<PartKind, string> = {
  'wire-rope': 'wire rope',
  'line-absorber': 'line absorber',
  connector: 'connector',
  stanchion: 'stanchion',
  bracket: 'bracket',
  'tie-back': 'tie-back',
  hardware: 'hardware',
}

const kindWord = (kind: string): string =>
  Object.hasOwn(KIND_WORDS, kind) ? KIND_WORDS[kind as PartKind] : kind

/** A reference to nothing, or to something of the wrong kind. What is no text is the schema's to tell. */
export function wrongKind(view: PlanView, id: unknown, kind: string, path: Path): Fault[] {
  if (typeof id !== 'string' || id === '') return []
  const found = view.named.get(id)
  if (found === kind) return []
  const what = found === undefined ? 'there is nothing with that id' : `that is a ${kindWord(found)}`
  return [fault(path, `must be the id of a ${kindWord(kind)}, is "${id}": ${what}`)]
}

function orderFaults({ stanchions, path }: LineView): Fault[] {
  if (stanchions.length < 2) {
    const has = stanchions.length === 1 ? 'only one' : 'none'
    return [fault([...path, 'stanchions'], `a line needs two stanchions at least, has ${has}`)]
  }
  const faults: Fault[] = []
  stanchions.forEach((s, i) => {
    const wanted = i === 0 || i === stanchions.length - 1 ? 'end' : 'intermediate'
    if (s.item.role !== wanted) {
      const which = wanted === 'end' ? 'first and the last stanchion' : 'stanchions between the two ends'
      faults.push(fault([...s.path, 'role'], `must be "${wanted}": so are the ${which} of a line`))
    }
    const before = stanchions[i - 1]
    if (before) faults.push(...stepFault(before.item, s))
  })
  return faults
}

function stepFault(before: Stanchion, { item, path }: Entry<Stanchion>): Fault[] {
  const step = item.station - before.station
  if (step >= SAME_STATION) return []
  const same = Math.abs(step) < SAME_STATION
  const what = same ? 'stands at the same station as' : 'stands before'
  return [
    fault(
      [...path, 'station'],
      `${what} ${before.id} at ${before.station} m: stations must increase along the line`,
    ),
  ]
}

function stationFaults({ raw, stanchions }: LineView, view: PlanView): Fault[] {
  const girder = view.girders.find((g) => g.item.id === raw.girder)?.item
  if (!girder) return []
  const length = girderLength(girder)
  return stanchions.flatMap((s) =>
    s.item.station <= length + SAME_STATION
      ? []
      : [
          fault(
            [...s.path, 'station'],
            `lies beyond the end of girder ${girder.id}, which is ${length.toFixed(3)} m long`,
          ),
        ],
  )
}

/** Along the top centreline, m. */
function girderLength({ start, end }: Girder): number {
  return Math.hypot(end[0] - start[0], end[1] - start[1], end[2] - start[2])
}

function tieBackFaults({ item, path }: Entry<TieBack>, line: LineView, view: PlanView): Fault[] {
  const faults = wrongKind(view, item.part, 'tie-back', [...path, 'part'])
  const ids = items(line.raw.stanchions).map((s) => (s as { id?: unknown } | null)?.id)
  if (!ids.includes(item.stanchion)) {
    faults.push(fault([...path, 'stanchion'], `this line has no stanchion with the id "${item.stanchion}"`))
  }
  return [
    ...faults,
    ...loopFaults(item.strapLoop, [...path, 'strapLoop'], line, view),
    ...loopFaults(item.tensionerLoop, [...path, 'tensionerLoop'], line, view),
  ]
}

function loopFaults(ref: LoopRef, path: Path, line: LineView, view: PlanView): Fault[] {
  const girder = line.raw.girder
  if (view.named.get(String(girder)) !== 'girder') return []
  const rows = view.loopRows.filter((r) => r.item.girder === girder)
  const row = rows.find((r) => r.item.id === ref.row)?.item
  if (!row) {
    const whole = view.girders.some((g) => g.item.id === girder)
    return whole
      ? [fault([...path, 'row'], `girder ${String(girder)} has no loop row with the id "${ref.row}"`)]
      : []
  }
  if (ref.index < row.count) return []
  const last = row.count - 1
  return [
    fault(
      [...path, 'index'],
      `row ${row.id} has ${row.count} loops, index 0 to ${last}; there is no ${ref.index}`,
    ),
  ]
}
