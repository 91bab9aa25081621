/** The drawing tools: the scene says what the pointer meets, the tool in hand makes of it what it will. */
import { girderFrame, stationOf, topPoint } from '../../geometry/girder'
import type { Plan, Vec2, Vec3 } from '../../plan/types'
import { formatLength } from '../../plan/units'
import { select, setGhost, setTool } from '../actions'
import { tell } from '../ask'
import { addAndSelect } from '../commands/add'
import { edit } from '../edit'
import { addLineWithCrew } from '../edits/crewed-line'
import { addGirder } from '../edits/girder-edits'
import { addDeck, addLane } from '../edits/obstacle-edits'
import { app } from '../store'
import type { Tool } from '../window-state'
import { snapPoint } from './snap'

/** What the pointer meets: a point of the site, and the girder with the station there where it is one. */
export interface Pick {
  point: Vec3
  girder: { id: string; station: number } | null
}

export interface PickKeys {
  shift?: boolean
  alt?: boolean
}

/** While a tool is in hand: where the next point would go, drawn as a ghost. */
export function toolMove(pick: Pick, keys: PickKeys = {}): void {
  const { tool, plan } = app.getState()
  if (tool.kind === 'select') return
  if (tool.kind === 'draw-line') {
    lineGhost(tool, pick)
    return
  }
  const at = snapPoint(plan, pointsOf(tool), pick.point, keys)
  const points = [...pointsOf(tool), at]
  setGhost({ points, closed: tool.kind === 'draw-deck' && points.length > 2, text: ghostText(points) })
}

/** A click with the tool in hand; `twice` ends what has as many points as one likes. */
export function toolClick(pick: Pick, keys: PickKeys & { twice?: boolean } = {}): void {
  const { tool, plan } = app.getState()
  if (tool.kind === 'draw-line') lineClick(tool, pick)
  else if (tool.kind !== 'select')
    placePoint(tool, snapPoint(plan, pointsOf(tool), pick.point, keys), keys.twice ?? false)
}

/** Ends what has as many points as one likes (Enter). */
export function toolDone(): void {
  const { tool } = app.getState()
  if (tool.kind === 'draw-deck') finishDeck(tool.points)
  if (tool.kind === 'draw-lane') finishLane(tool.points)
}

const toolCancel = (): void => setTool({ kind: 'select' })

const pointsOf = (tool: Tool): Vec3[] => ('points' in tool ? tool.points : [])

function ghostText(points: Vec3[]): string {
  const [a, b] = points.slice(-2)
  if (!a || !b) return ''
  return formatLength(Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]), app.getState().units)
}

function placePoint(tool: Tool, at: Vec3, twice: boolean): void {
  if (tool.kind === 'draw-girder') {
    const start = tool.points[0]
    if (start) finishGirder(start, at)
    else app.setState({ tool: { kind: 'draw-girder', points: [at] } })
  } else if (tool.kind === 'draw-deck' || tool.kind === 'draw-lane') {
    const points = twice ? tool.points : [...tool.points, at]
    app.setState({ tool: { kind: tool.kind, points } })
    if (twice) toolDone()
  }
}

function finishGirder(start: Vec3, end: Vec3): void {
  const id = addAndSelect(
    'girder',
    'draw a girder',
    (plan) => addGirder(plan, start, end),
    'The girder would be too short.',
  )
  if (id) toolCancel()
}

function finishDeck(points: Vec3[]): void {
  const outline = points.map(([x, y]): Vec2 => [x, y])
  if (addAndSelect('deck', 'draw a deck', (plan) => addDeck(plan, outline), 'A deck needs three corners.'))
    toolCancel()
}

function finishLane(points: Vec3[]): void {
  if (addAndSelect('obstacle', 'draw a lane', (plan) => addLane(plan, points), 'A lane needs two points.'))
    toolCancel()
}

function lineGhost(tool: Tool & { kind: 'draw-line' }, pick: Pick): void {
  const { plan, units } = app.getState()
  const here = onGirder(plan, tool, pick)
  if (!here) {
    setGhost(null)
    return
  }
  const text = formatLength(Math.abs(here.station - (tool.from?.station ?? 0)), units)
  const stations = tool.from ? [tool.from.station, here.station] : [here.station, here.station]
  const points = stations.map((s) => overGirder(plan, here.girder, s))
  setGhost({
    points,
    closed: false,
    text: tool.from ? text : `${formatLength(here.station, units)} from its start`,
  })
}

/** Rope height over the girder for the ghost, m: only a picture. */
const GHOST_HEIGHT = 1

function overGirder(plan: Plan, id: string, station: number): Vec3 {
  const girder = plan.girders.find((g) => g.id === id)
  if (!girder) return [0, 0, 0]
  const [x, y, z] = topPoint(girderFrame(girder), station, girder.loops[0]?.offset ?? 0)
  return [x, y, z + GHOST_HEIGHT]
}

/** Where on a girder the pointer is; once a line has begun, on its girder however far beside it the pointer goes. */
function onGirder(
  plan: Plan,
  tool: Tool & { kind: 'draw-line' },
  pick: Pick,
): { girder: string; station: number } | null {
  if (!tool.from) return pick.girder ? { girder: pick.girder.id, station: pick.girder.station } : null
  const girder = plan.girders.find((g) => g.id === tool.from?.girder)
  if (!girder) return null
  const frame = girderFrame(girder)
  const { station } = stationOf(frame, pick.point)
  return { girder: girder.id, station: Math.min(frame.length, Math.max(0, station)) }
}

function lineClick(tool: Tool & { kind: 'draw-line' }, pick: Pick): void {
  const { plan } = app.getState()
  const here = onGirder(plan, tool, pick)
  if (!here) {
    tell('A line runs along a girder: click on one.', 'look')
    return
  }
  if (!tool.from) {
    app.setState({ tool: { kind: 'draw-line', from: { girder: here.girder, station: here.station } } })
    return
  }
  const from = tool.from.station
  let id: string | null = null
  edit('draw a line', (draft) => {
    id = addLineWithCrew(draft, here.girder, from, here.station)
    return id !== null
  })
  if (id) select({ kind: 'line', id })
  else tell('There is no room there for two stanchions and their tie-backs.', 'look')
  if (id) toolCancel()
}
