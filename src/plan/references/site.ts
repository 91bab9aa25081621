import { type Fault, fault } from '../fault'
import type { Deck, Girder, Obstacle, Vec3 } from '../types'
import { meshNameProblem } from './mesh-name'
import type { Entry, PlanView } from './view'

/** m; shorter than this along the ground a girder has no direction. */
const SHORTEST = 0.01
/** m; a longer one is a slip of the decimal point. */
const LONGEST = 2_000

/** What is wrong with the girders, decks and obstacles as bodies in space. */
export function siteFaults(view: PlanView): Fault[] {
  return [
    ...view.girders.flatMap(girderFaults),
    ...view.decks.flatMap(deckFaults),
    ...view.obstacles.flatMap((o) => obstacleFaults(o, view)),
  ]
}

function girderFaults({ item, path }: Entry<Girder>): Fault[] {
  const faults: Fault[] = []
  if (planLength([item.start, item.end]) < SHORTEST) {
    faults.push(
      fault([...path, 'end'], 'start and end stand at the same place in plan: the girder has no length'),
    )
  }
  const length = Math.hypot(...item.start.map((x, i) => (item.end[i] ?? x) - x))
  if (length > LONGEST) {
    faults.push(
      fault([...path, 'end'], `the girder is ${Math.round(length)} m long; at most ${LONGEST} m is read`),
    )
  }
  const { topThickness, bottomThickness, depth } = item.section
  if (topThickness + bottomThickness > depth * (1 + 1e-9)) {
    const sum = 'top and bottom thickness together are more than the depth of the section'
    faults.push(fault([...path, 'section', 'depth'], sum))
  }
  return faults
}

function deckFaults({ item, path }: Entry<Deck>): Fault[] {
  const area = item.outline.reduce((sum, [x, y], i) => {
    const [nx, ny] = item.outline[(i + 1) % item.outline.length]!
    return sum + (x * ny - nx * y) / 2
  }, 0)
  return Math.abs(area) < 1e-4 ? [fault([...path, 'outline'], 'the outline encloses no area')] : []
}

function obstacleFaults({ item, path }: Entry<Obstacle>, view: PlanView): Fault[] {
  if (item.kind === 'lane' && planLength(item.path) < SHORTEST) {
    return [fault([...path, 'path'], 'the path of the lane has no length in plan')]
  }
  if (item.kind === 'mesh') {
    const problem = meshNameProblem(item.file)
    return problem === null ? [] : [fault([...path, 'file'], problem)]
  }
  if (item.kind !== 'cross-frame') return []
  return item.between.flatMap((id, i) =>
    view.named.get(id) === 'girder'
      ? []
      : [fault([...path, 'between', i], `there is no girder with the id "${id}"`)],
  )
}

/** Length of a path seen from above, m. */
function planLength(path: readonly Vec3[]): number {
  let length = 0
  for (let i = 1; i < path.length; i++) {
    const [ax, ay] = path[i - 1]!
    const [bx, by] = path[i]!
    length += Math.hypot(bx - ax, by - ay)
  }
  return length
}
