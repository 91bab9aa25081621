/** Explanations of a fall by energy: free fall, extension, balance, total fall, clearance, depth of the room. */
import { derived, type Explained, found, given } from './explain'
import { GRAVITY } from './model'

/** The figures of one fall as the solver used and found them, SI. */
export interface FallFigures {
  type: 'lanyard' | 'retractable'
  /** Lanyard length or lock-off distance, m. */
  length: number
  dRingHeight: number
  /** Height of the unloaded rope above the walking surface there, m. */
  height: number
  mass: number
  workers: number
  /** k, N/m, and Fp, N, of the connector at its end. */
  stiffness: number
  plateau: number
  harnessStretch: number
  marginBelow: number
  /** h, d, e, x, m. */
  freeFall: number | null
  drop: number | null
  extension: number | null
  torn: number | null
  /** F on one body, N, and U(P), J. */
  arrestForce: number | null
  work: number | null
  sources: { connector: string; margin: string }
}

const CREW = 'the worker’s data in the plan'
const LINE_LAW = 'line law: exact elastic catenaries (Irvine 1981) under a point load, solved numerically'
const BALANCE = 'root of the energy balance'

/** h from connector length, D-ring height and the rope's height. */
export function explainFreeFall(f: FallFigures): Explained {
  const lanyard = f.type === 'lanyard'
  return derived(
    lanyard ? 'freeFallLanyard' : 'freeFallRetractable',
    'Free fall',
    [connectorLength(f), dRing(f), ropeHeight(f)],
    { symbol: 'h', value: f.freeFall },
  )
}

/** e = F/k + x. */
export function explainExtension(f: FallFigures): Explained {
  const parts = [arrest(f), stiffness(f), torn(f)]
  return derived('connectorExtension', 'Connector extension', parts, { symbol: 'e', value: f.extension })
}

/** What the fall gives against what line and connectors take; the difference is the residue of the solver's root. */
export function explainEnergyBalance(f: FallFigures): Explained {
  const n = given('Workers who fall together', f.workers, 'count', 'the plan', 'n')
  const gives = derived('fallEnergy', 'Energy of the fall', [
    n,
    given('Mass of one worker', f.mass, 'kg', CREW, 'm'),
    given('Gravity', GRAVITY, 'm/s2', 'standard gravity', 'g'),
    explainFreeFall(f),
    drop(f),
    explainExtension(f),
  ])
  const takes = derived('absorbedEnergy', 'Energy taken by line and connectors', [
    found('Work done on the line', f.work, 'J', 'integral of load over line drop, U(P)'),
    n,
    arrest(f),
    stiffness(f),
    given('Plateau of the connector', f.plateau, 'N', f.sources.connector, 'Fp'),
    torn(f),
  ])
  return derived('difference', 'Energy balance (zero when taken up)', [gives, takes])
}

/** h + d + e + harness stretch. */
function explainTotalFall(f: FallFigures): Explained {
  const parts = [explainFreeFall(f), drop(f), explainExtension(f), stretch(f)]
  return derived('totalFall', 'Total fall', parts)
}

/** Total fall and margin, below the walking surface. */
export function explainClearance(f: FallFigures, value?: number | null): Explained {
  const parts = [explainTotalFall(f), margin(f)]
  return derived(
    'clearance',
    'Clearance below the walking surface',
    parts,
    value === undefined ? {} : { value },
  )
}

/** Depth of the fall room below the girder's top: no max(0), a short lanyard on a high line only makes it shallower. */
export function explainDepth(f: FallFigures, value?: number | null): Explained {
  const more = value === undefined ? {} : { value }
  if (f.type === 'retractable') {
    const parts = [drop(f), explainFreeFall(f), explainExtension(f), stretch(f), margin(f)]
    return derived('depthRetractable', 'Depth below the girder’s top', parts, more)
  }
  const parts = [
    drop(f),
    connectorLength(f),
    explainExtension(f),
    stretch(f),
    dRing(f),
    ropeHeight(f),
    margin(f),
  ]
  return derived('depthLanyard', 'Depth below the girder’s top', parts, more)
}

const connectorLength = (f: FallFigures): Explained =>
  given(
    f.type === 'lanyard' ? 'Lanyard length' : 'Lock-off distance',
    f.length,
    'm',
    f.sources.connector,
    'length',
  )
const dRing = (f: FallFigures): Explained =>
  given('D-ring above the feet', f.dRingHeight, 'm', CREW, 'dRingHeight')
const ropeHeight = (f: FallFigures): Explained =>
  found('Unloaded rope above the walking surface', f.height, 'm', 'installed line at service temperature')
const stretch = (f: FallFigures): Explained =>
  given('Harness stretch and D-ring shift', f.harnessStretch, 'm', CREW, 'harnessStretch')
const margin = (f: FallFigures): Explained =>
  given('Margin below', f.marginBelow, 'm', f.sources.margin, 'marginBelow')
const drop = (f: FallFigures): Explained => ({ ...found('Line drop', f.drop, 'm', LINE_LAW), symbol: 'd' })
const arrest = (f: FallFigures): Explained => ({
  ...found('Force on one body', f.arrestForce, 'N', BALANCE),
  symbol: 'F',
})
const torn = (f: FallFigures): Explained => ({
  ...found('Torn length', f.torn, 'm', BALANCE),
  symbol: 'x',
})
const stiffness = (f: FallFigures): Explained =>
  given('Connector stiffness before it tears', f.stiffness, 'N/m', f.sources.connector, 'k')
