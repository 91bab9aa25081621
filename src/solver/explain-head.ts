/** Explanations of an end stanchion with its tie-backs, its bracket and its loops (statics of head and tube). */
import { type BracketForces, type BracketLoad, bracketForces } from './bracket'
import { derived, type Explained, found, given } from './explain'

interface LegFigures {
  label: string
  /** Horizontal distances from head to loop along and across the girder, m. */
  along: number
  across: number
  /** s, N per unit strain. */
  stiffness: number
  /** Its foot is on the line's side: it goes slack when the head is pulled. */
  slack?: boolean
}

export interface HeadFigures {
  /** T, pull of the rope on the head along the line, N; V, its downward pull, N. */
  pull: number
  down: number
  /** ks, N/m. */
  headStiffness: number
  /** h, m. */
  height: number
  legs: LegFigures[]
  sources: { stanchion: string; tieBack: string }
  /** Which fall the pull is from. */
  corner: string
}

export interface HeadExplained {
  legs: Explained[]
  angles: Explained[]
  shaft: Explained
  axial: Explained
  baseMoment: Explained
}

/** Leg forces and angles, shaft force, axial force and base moment from one head pull. Without legs K = ks. */
export function explainHead(f: HeadFigures): HeadExplained {
  const pull = { ...found('Head pull along the line', f.pull, 'N', f.corner), symbol: 'T' }
  const height = given('Stanchion height', f.height, 'm', f.sources.stanchion, 'h')
  const ks = given('Stiffness of the shaft', f.headStiffness, 'N/m', f.sources.stanchion, 'ks')
  const legs = f.legs.map((leg) => legParts(leg, height, f.sources.tieBack))
  const K = derived('headStiffness', 'Stiffness of the head', [ks, ...legs.map((l) => l.stiffness)], {
    symbol: 'K',
  })
  const forces = legs.map((l) =>
    l.slack
      ? given(l.label, 0, 'N', SLACK)
      : derived('legForce', l.label, [pull, l.stiffness, K, l.along, l.length]),
  )
  const shaft = derived('shaftForce', 'Shaft force', [pull, ks, K])
  const rope = found('Downward pull of the rope', f.down, 'N', f.corner)
  const downs = forces.map((force, i) =>
    derived('legDown', `${f.legs[i]!.label}, downwards`, [force, height, legs[i]!.length]),
  )
  return {
    legs: forces,
    angles: legs.map((l) => derived('legAngle', `${l.label}, angle from the vertical`, [height, l.length])),
    shaft,
    axial: derived('axial', 'Axial force', [rope, ...downs]),
    baseMoment: derived('baseMoment', 'Base moment', [shaft, height]),
  }
}

function legParts(leg: LegFigures, height: Explained, source: string) {
  const along = given(`${leg.label}, along the girder`, leg.along, 'm', 'geometry', 'a')
  const across = given(`${leg.label}, across the girder`, leg.across, 'm', 'geometry', 'b')
  const length = derived('legLength', `${leg.label}, length`, [along, across, height], { symbol: 'l' })
  const slack = leg.slack === true || leg.along === 0
  const name = `${leg.label}, stiffness along the line`
  const strap = given('Strap, force per unit strain', leg.stiffness, 'N', source, 's')
  const stiffness = slack
    ? given(name, 0, 'N/m', SLACK, 'k')
    : derived('legStiffness', name, [strap, length, along], { symbol: 'k', unit: 'N/m' })
  return { label: leg.label, along, length, stiffness, slack }
}

const SLACK = 'a leg on the line’s side, or straight under the head, takes nothing along the line'

/**
 * Pull in every loop of a bracket, in the order of `load.loops`, with the tube's pose that gives it. The two balance
 * nodes show that loops and bolts carry the load. Null where nothing can hold the bracket.
 */
export function explainLoops(
  load: BracketLoad,
  names: string[],
): { loops: Explained[]; balance: Explained } | null {
  const forces = bracketForces(load)
  if (forces === null) return null
  const lift = found('Lift of the tube in units of one loop', forces.lift, 'N', POSE)
  const tilt = found('Tilt of the tube in units of one loop', forces.tilt, 'N/m', POSE)
  const node = (equation: 'loopPull' | 'boltPush', label: string, x: number): Explained =>
    derived(equation, label, [lift, tilt, given('Distance from the stanchion', x, 'm', 'geometry', 'x')])
  const loops = load.loops.map((x, i) => node('loopPull', names[i] ?? `Loop at ${x.toFixed(3)} m`, x))
  const half = load.boltsAlong / 2
  const bolts = [node('boltPush', 'Bolt before', -half), node('boltPush', 'Bolt after', half)]
  return { loops, balance: balanceNode(load, forces, bolts, loops) }
}

const POSE =
  'rigid tube on one-sided springs: the one set of loops and bolts that balances axial force and base moment'

function balanceNode(
  load: BracketLoad,
  forces: BracketForces,
  bolts: Explained[],
  loops: Explained[],
): Explained {
  const push = derived('sum', 'Push of the bolts', bolts, { value: forces.bolts[0] + forces.bolts[1] })
  const pull = derived('sum', 'Pull of the loops', loops, {
    unit: 'N',
    value: forces.loops.reduce((total, p) => total + p, 0),
  })
  const held = derived('difference', 'Held by bolts less loops', [push, pull])
  const asked = given('Axial force on the bracket', load.axial, 'N', 'head of the stanchion')
  return derived('difference', 'Balance of the bracket (zero when held)', [held, asked])
}
