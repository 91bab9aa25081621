/**
 * A bracket's tube held down by loops and levelling bolts (mechanics section 7). The tube is rigid; loops are equal
 * springs that only pull it down, bolts springs a hundred times stiffer that only push it up. Two unknowns: the tube's
 * lift at the stanchion and its tilt. x runs along the girder from the stanchion, positive towards higher stations.
 */

/** Stiffness of a levelling bolt over that of a loop. */
export const BOLT_OVER_LOOP = 100

/** A set of springs counts as in balance below this part of the load. */
const BALANCE = 1e-10

export interface BracketLoad {
  /** Loops on the tube, x from the stanchion, m, in any order. */
  loops: number[]
  /** Distance between the levelling bolts along the girder, m. */
  boltsAlong: number
  /** Down on the bracket, N; negative: the rope lifts it. */
  axial: number
  /** Base moment, N m; positive: the head is pulled towards higher stations and that side is pressed. */
  moment: number
}

export interface BracketForces {
  /** Pull in each loop, N >= 0, in the order of the input. */
  loops: number[]
  /** Push of the bolts at -boltsAlong/2 and +boltsAlong/2, N >= 0. */
  bolts: [number, number]
  /** Lift of the tube at the stanchion times the stiffness of one loop, N. */
  lift: number
  /** Tilt (rising towards higher stations) times the stiffness of one loop, N/m. */
  tilt: number
}

interface Spring {
  x: number
  stiffness: number
  /** A loop acts where the tube rises, a bolt where it sinks. */
  pulls: boolean
}

interface Pose {
  lift: number
  tilt: number
}

/**
 * Pull in every loop and push of every bolt, N; null where no set of loops and bolts can hold the load.
 *
 * A rigid tube crosses zero at most once, so the springs that act are the loops on one side of some split and the bolts
 * on the other: 2 (n + 1) sets in all. Each is solved exactly and held against the real one-sided springs; nothing is
 * iterated, so nothing can cycle. Balance: sum(push - pull) = axial, sum((push - pull) x) = moment.
 */
export function bracketForces(load: BracketLoad): BracketForces | null {
  const springs = springsOf(load)
  if (![load.axial, load.moment, ...springs.map((s) => s.x)].every(Number.isFinite)) return null
  const arm = Math.max(...springs.map((s) => Math.abs(s.x)), 1e-3)
  const scale = Math.max(Math.abs(load.axial), Math.abs(load.moment) / arm)
  if (scale === 0) return forcesAt(load, { lift: 0, tilt: 0 })
  let best: { pose: Pose; error: number } | null = null
  for (const set of signSplits(springs)) {
    const pose = poseOf(set, load)
    if (pose === null) continue
    const error = imbalance(springs, pose, load, arm) / scale
    if (best === null || error < best.error) best = { pose, error }
    if (error < BALANCE / 100) break
  }
  return best !== null && best.error <= BALANCE ? forcesAt(load, best.pose) : null
}

function springsOf(load: BracketLoad): Spring[] {
  const half = load.boltsAlong / 2
  const loops = load.loops.map((x) => ({ x, stiffness: 1, pulls: true }))
  const bolts = [-half, half].map((x) => ({ x, stiffness: BOLT_OVER_LOOP, pulls: false }))
  return [...loops, ...bolts].sort((a, b) => a.x - b.x)
}

/** Every set of springs that can act together: loops on the rising side of a split, bolts on the sinking side. */
function* signSplits(springs: Spring[]): Generator<Spring[]> {
  for (let split = 0; split <= springs.length; split++) {
    yield springs.filter((s, i) => s.pulls === i < split)
    yield springs.filter((s, i) => s.pulls === i >= split)
  }
}

/** The pose at which a set of springs, taken as two-sided, balances the load; null where the set holds nothing. */
function poseOf(set: Spring[], load: BracketLoad): Pose | null {
  const sum = set.reduce((total, s) => total + s.stiffness, 0)
  if (sum === 0) return null
  const centre = set.reduce((total, s) => total + s.stiffness * s.x, 0) / sum
  const rotational = set.reduce((total, s) => total + s.stiffness * (s.x - centre) ** 2, 0)
  const reach = set.reduce((total, s) => Math.max(total, Math.abs(s.x)), 1e-3)
  const liftAtCentre = -load.axial / sum
  // Springs at one place resist no tilt: the balance of moments then decides whether they hold.
  const tilt =
    rotational <= 1e-12 * sum * reach * reach ? 0 : -(load.moment - load.axial * centre) / rotational
  return { lift: liftAtCentre - tilt * centre, tilt }
}

/** Force of one spring on the tube, up positive, N. */
function springForce(s: Spring, pose: Pose): number {
  const rise = s.stiffness * (pose.lift + pose.tilt * s.x)
  return s.pulls ? Math.min(0, -rise) : Math.max(0, -rise)
}

/** What the real one-sided springs leave unbalanced at a pose, N. */
function imbalance(springs: Spring[], pose: Pose, load: BracketLoad, arm: number): number {
  let up = -load.axial
  let moment = -load.moment
  for (const s of springs) {
    const force = springForce(s, pose)
    up += force
    moment += force * s.x
  }
  return Math.max(Math.abs(up), Math.abs(moment) / arm)
}

function forcesAt(load: BracketLoad, pose: Pose): BracketForces {
  const pull = (x: number): number => Math.max(0, pose.lift + pose.tilt * x)
  const push = (x: number): number => Math.max(0, -BOLT_OVER_LOOP * (pose.lift + pose.tilt * x))
  return {
    loops: load.loops.map(pull),
    bolts: [push(-load.boltsAlong / 2), push(load.boltsAlong / 2)],
    lift: pose.lift,
    tilt: pose.tilt,
  }
}
