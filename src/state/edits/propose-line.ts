/**
 * A first layout for a line drawn in two clicks: end stanchions between loops where a tie-back still finds its loops,
 * others evenly between them, tie-backs on the far sides, everything else as in the plan's last line. It is a start for
 * the planner's hand, and the findings say at once what is wrong with it.
 */
import { engagedLoops, rowUnder } from '../../geometry/loops'
import { usedIds } from '../../plan/ids'
import { partLibrary } from '../../plan/library'
import type {
  BracketPart,
  Girder,
  Line,
  Part,
  PartKind,
  PartOf,
  Plan,
  Stanchion,
  TieBack,
} from '../../plan/types'
import { copied } from './copied'
import { gapStations, girderLength, nearest, tidy } from './gaps'
import { freeName, newId } from './ids'
import { proposeFeet } from './propose-feet'

/** Between stanchions where nothing limits it, m: a usual start, 30 ft. */
const USUAL_SPAN = 9.144

/** In series with the first line's rope: a shackle at either end, the tensioner, the clamp. */
const USUAL_HARDWARE = ['shackle-12', 'tensioner', 'rope-clamp', 'shackle-12']

/** Adds the proposed line with the parts that it needs; null where the girder leaves no room for one. */
export function addProposedLine(plan: Plan, girderId: string, from: number, to: number): string | null {
  const girder = plan.girders.find((g) => g.id === girderId)
  if (!girder || !Number.isFinite(from) || !Number.isFinite(to)) return null
  const before = plan.parts.length
  const model = lineModel(plan)
  const stations = proposeStations(plan, girder, model, Math.min(from, to), Math.max(from, to))
  if (!stations) {
    // A refused line leaves nothing behind.
    if (plan.parts.length > before) plan.parts.length = before
    return null
  }
  const taken = usedIds(plan)
  const stanchions = stations.map((station, i): Stanchion => {
    const role = i === 0 || i === stations.length - 1 ? 'end' : 'intermediate'
    const plate = plateFor(plan, girder, model)
    const place = { station, offset: model.offset ?? girder.loops[0]?.offset ?? 0 }
    return {
      id: newId(plan, 'S', taken),
      role,
      ...place,
      part: model.stanchion,
      bracket: model.bracket,
      ...plate,
    }
  })
  const id = newId(plan, 'L', taken)
  const line: Line = { ...model.line, id, name: '', girder: girder.id, stanchions, tieBacks: [] }
  line.name = freeName(`Line ${plan.lines.length + 1}`, plan.lines)
  line.tieBacks = endTieBacks(plan, girder, stanchions, model.tieBack, taken)
  plan.lines.push(line)
  return id
}

interface LineModel {
  line: Omit<Line, 'id' | 'name' | 'girder' | 'stanchions' | 'tieBacks'>
  stanchion: string
  bracket: string
  tieBack: string
  offset: number | null
}

/** What the last line was made of; for a first line, the first part of each kind. */
function lineModel(plan: Plan): LineModel {
  const last = plan.lines.at(-1)
  const post = last?.stanchions[0]
  if (last && post) {
    const { id: _i, name: _n, girder: _g, stanchions: _s, tieBacks: _t, ...line } = copied(last)
    const tieBack = last.tieBacks[0]?.part ?? firstPart(plan, 'tie-back').id
    return { line, stanchion: post.part, bracket: post.bracket, tieBack, offset: null }
  }
  const hardware = USUAL_HARDWARE.flatMap((id) => partLibrary.filter((p) => p.id === id)).map(
    (p) => keepPart(plan, p).id,
  )
  return {
    line: {
      wireRope: firstPart(plan, 'wire-rope').id,
      absorber: firstPart(plan, 'line-absorber').id,
      absorberAt: 'end',
      hardware,
      pretension: 4450,
      pretensionTolerance: 0.1,
      installTemperature: 15,
      serviceTemperature: { low: -15, high: 40 },
      workersAtOnce: 1,
    },
    stanchion: firstPart(plan, 'stanchion').id,
    bracket: firstPart(plan, 'bracket').id,
    tieBack: firstPart(plan, 'tie-back').id,
    offset: null,
  }
}

/** The plan's first part of a kind, or the library's, which is then put into the plan. */
export function firstPart<K extends PartKind>(plan: Plan, kind: K): PartOf<K> {
  const own = plan.parts.find((p) => p.kind === kind)
  const part = own ?? keepPart(plan, partLibrary.find((p) => p.kind === kind) as Part)
  return part as PartOf<K>
}

/** Puts a part into the plan unless it is there already. */
export function keepPart(plan: Plan, part: Part): Part {
  const there = plan.parts.find((p) => p.id === part.id)
  if (there) return there
  plan.parts.push(copied(part))
  return part
}

/** Stations from end to end, or null: fewer than two gaps that will do. */
function proposeStations(
  plan: Plan,
  girder: Girder,
  model: LineModel,
  low: number,
  high: number,
): number[] | null {
  const row = rowUnder(girder, model.offset ?? girder.loops[0]?.offset ?? 0)
  const all = gapStations(girder, row)
  const good = all.filter((s) => standsWell(plan, girder, model, s))
  const spots = good.length >= 2 ? good : all
  const length = girderLength(girder)
  const starts = spots.filter((s) => tiesUp(plan, girder, model, s, -1))
  const ends = spots.filter((s) => tiesUp(plan, girder, model, s, 1))
  if (row && (starts.length === 0 || ends.length === 0)) return null
  const start = nearest(starts, Math.max(0, low))
  const end = nearest(ends, Math.min(length, high))
  if (end - start < 1) return null
  const spans = Math.max(1, Math.ceil((end - start) / (plan.basis.maxSpan ?? USUAL_SPAN) - 1e-6))
  const even = Array.from({ length: spans + 1 }, (_, i) =>
    nearest(spots, start + ((end - start) * i) / spans),
  )
  return [...new Set(even.map(tidy))]
}

/** Whether a bracket there takes enough loops, in all and on either side. */
function standsWell(plan: Plan, girder: Girder, model: LineModel, station: number): boolean {
  const bracket = plan.parts.find((p): p is BracketPart => p.id === model.bracket && p.kind === 'bracket')
  if (!bracket) return true
  const offset = model.offset ?? girder.loops[0]?.offset ?? 0
  const { loops, before, after } = engagedLoops(girder, station, offset, bracket.tubeLength)
  const { minLoopsEngaged, minLoopsBeside } = plan.basis
  return loops.length >= minLoopsEngaged && Math.min(before, after) >= minLoopsBeside
}

const postAt = (girder: Girder, model: LineModel, station: number): Stanchion => ({
  id: '',
  role: 'end',
  station,
  offset: model.offset ?? girder.loops[0]?.offset ?? 0,
  part: model.stanchion,
  bracket: model.bracket,
})

const tiesUp = (plan: Plan, girder: Girder, model: LineModel, station: number, side: 1 | -1): boolean =>
  proposeFeet(plan, girder, postAt(girder, model, station), side) !== null

function endTieBacks(
  plan: Plan,
  girder: Girder,
  posts: Stanchion[],
  part: string,
  taken: Set<string>,
): TieBack[] {
  const ends: [Stanchion | undefined, 1 | -1][] = [
    [posts[0], -1],
    [posts.at(-1), 1],
  ]
  return ends.flatMap(([post, side]) => {
    const feet = post && proposeFeet(plan, girder, post, side)
    return post && feet ? [{ id: newId(plan, 'T', taken), stanchion: post.id, part, ...feet }] : []
  })
}

/** Plates where a levelling bolt stands nearer to an edge than the basis wants. */
function plateFor(plan: Plan, girder: Girder, model: LineModel): { plate?: number } {
  const bracket = plan.parts.find((p): p is BracketPart => p.id === model.bracket && p.kind === 'bracket')
  const offset = Math.abs(model.offset ?? girder.loops[0]?.offset ?? 0)
  const edge = girder.section.topWidth / 2 - offset - (bracket?.boltsAcross ?? 0) / 2
  return edge < plan.basis.boltEdge ? { plate: plan.basis.plateThickness } : {}
}
