/** Lines, workers and bare chains for the tests of falls in time. */
import type { Grip } from '../../../src/plan/types'
import { installedLine, unloadedLine } from '../../../src/solver/installed'
import { GRAVITY, type LineModel } from '../../../src/solver/model'
import { buildChain } from '../../../src/solver/time/chain'
import { fallInTime } from '../../../src/solver/time/fall'
import { FIXED, type Mesh } from '../../../src/solver/time/mesh'
import { stableStep } from '../../../src/solver/time/stable-step'
import type { Motion } from '../../../src/solver/time/step'
import type { TimeFall, TimeFallInput, TimeFallOptions, TimeWorker } from '../../../src/solver/time/types'
import { solvedValue } from '../../support/close'
import { seeded } from '../../support/random'

/** A level line at 1.07 m over a walking surface at 0. */
export function lineModel(spans: number[], change: Partial<LineModel> = {}): LineModel {
  const x = [0]
  for (const s of spans) x.push(x[x.length - 1]! + s)
  return {
    x,
    z: x.map(() => 1.07),
    massPerMetre: 0.362,
    thermalExpansion: 12e-6,
    axialStiffness: { low: 2.6e6, high: 3.9e6 },
    absorber: null,
    absorberAt: 'end',
    pretension: 4450,
    pretensionTolerance: 0.1,
    installTemperature: 15,
    serviceTemperature: { low: -15, high: 40 },
    endStiffness: [3e5, 3e5],
    endMass: [4.75, 4.75],
    ...change,
  }
}

export const FIRM_ABSORBER = {
  onset: { low: 8600, high: 9400 },
  full: { low: 10800, high: 12000 },
  maxExtension: 1.07,
}

export const worker = (span: number, x: number, change: Partial<TimeWorker> = {}): TimeWorker => ({
  mass: 100,
  connector: { stiffness: 60000, plateau: 4000, maxExtension: 1.07 },
  type: 'lanyard',
  length: 1.2,
  span,
  x,
  surface: 0,
  dRingHeight: 1.5,
  harnessStretch: 0.3,
  marginBelow: 0.61,
  ...change,
})

export function fallInput(
  model: LineModel,
  workers: TimeWorker[],
  set: 'soft' | 'stiff' = 'soft',
  grip: Grip = 'sliding',
): TimeFallInput {
  const installed = solvedValue(installedLine(model, set))
  return { model, set: installed.set, grip, line: solvedValue(unloadedLine(model, installed, grip)), workers }
}

/** Four spans of 7, 10, 0.6 and 8 m, sloping, of unlike ends. */
export function unlikeLine(
  workers: TimeWorker[],
  grip: Grip,
  absorberAt: 'start' | 'end' = 'end',
): TimeFallInput {
  const model = lineModel([7, 10, 0.6, 8], {
    absorber: FIRM_ABSORBER,
    absorberAt,
    endStiffness: [2e5, 4e5],
    endMass: [5, 9],
  })
  model.z = [1.07, 1.3, 1.2, 1.25, 1.5]
  return fallInput(model, workers, 'soft', grip)
}
/** Two workers on its long spans. */
export const W1 = worker(1, 11)
export const W3 = worker(3, 20, { mass: 80, connector: { stiffness: 45000, plateau: 4000, maxExtension: 1 } })

export const fall = (input: TimeFallInput, options: TimeFallOptions = {}): TimeFall =>
  solvedValue(fallInTime(input, options))

/** A seeded line of one to four spans with one to three workers, as sites have them and somewhat beyond. */
export function randomFall(seed: number): TimeFallInput {
  const r = seeded(seed)
  const spans = Array.from({ length: r.whole(1, 4) }, () => r.between(4, 15))
  const slope = r.next() < 0.5 ? 0 : r.between(-0.08, 0.08)
  const onset = r.between(5000, 10000)
  const model = lineModel(spans, {
    massPerMetre: r.between(0.2, 0.6),
    axialStiffness: { low: r.between(1.5e6, 3e6), high: r.between(3e6, 6e6) },
    absorber:
      r.next() < 0.6
        ? {
            onset: { low: onset, high: onset * 1.1 },
            full: { low: onset * 1.25, high: onset * 1.4 },
            maxExtension: r.between(0.5, 1.2),
          }
        : null,
    absorberAt: r.next() < 0.5 ? 'start' : 'end',
    pretension: r.between(2000, 5000),
    endStiffness: [r.between(1e5, 6e5), r.between(1e5, 6e5)],
  })
  model.z = model.x.map((x) => 1.07 + slope * x)
  const span = r.whole(0, spans.length - 1)
  const share = r.next() < 0.5 ? 0.5 : r.between(0.1, 0.9)
  const x = model.x[span]! + share * spans[span]!
  const one = worker(span, x, {
    mass: r.between(60, 140),
    connector: {
      stiffness: r.between(2e4, 1e5),
      plateau: r.between(2500, 6000),
      maxExtension: r.between(0.5, 1.5),
    },
    length: r.between(0.6, 1.8),
    type: r.next() < 0.7 ? 'lanyard' : 'retractable',
    surface: slope * x,
  })
  const count = r.next() < 0.6 ? 1 : r.whole(2, 3)
  const workers = Array.from({ length: count }, () => one)
  return fallInput(model, workers, r.next() < 0.5 ? 'soft' : 'stiff', r.next() < 0.7 ? 'sliding' : 'held')
}

/** A chain of equal elements between points, without a line around it: first node fixed, more as told. */
export interface BareChain {
  /** Place of node i, m. */
  at: (i: number) => [number, number]
  elements: number
  /** Unstretched length of all of it, m. */
  rope: number
  EA: number
  massPerMetre: number
  /** Nodes that do not move. */
  fixed: number[]
  /** Extra mass at the last node, kg. */
  endMass?: number
  /** Without the rope's damping, for springs of textbooks. */
  undamped?: boolean
}

export function bareMotion(c: BareChain): Motion {
  const count = c.elements + 1
  const rest = c.rope / c.elements
  const mesh: Mesh = {
    count,
    nodes: new Float64Array(4 * count),
    mass: new Float64Array(count).fill(rest * c.massPerMetre),
    kind: new Uint8Array(count),
    pieces: [{ first: 0, last: c.elements, rest }],
    rest: new Float64Array(c.elements).fill(rest),
    headX: [],
    headZ: [],
    headNode: [],
    ropeTo: [],
    ties: [],
    from: 0,
    to: 0,
  }
  for (let i = 0; i < count; i++) mesh.nodes.set(c.at(i), 4 * i)
  mesh.mass[0]! /= 2
  mesh.mass[c.elements] = mesh.mass[c.elements]! / 2 + (c.endMass ?? 0)
  for (const n of c.fixed) mesh.kind[n] = FIXED
  const set = { stiffness: c.EA, weight: c.massPerMetre * GRAVITY, absorber: null }
  const input = {
    model: { ...lineModel([1]), massPerMetre: c.massPerMetre },
    set,
    grip: 'held',
    line: { spans: [{ H: 1, V: 0, L: 1 }], headShift: [0, 0], absorberExtension: 0 },
    workers: [],
  } as unknown as TimeFallInput
  const dt = 0.9 * stableStep(input, mesh)
  const chain = buildChain(input, mesh, dt)
  if (c.undamped) for (const f of chain.figures) f[1] = 0
  return {
    chain,
    bodies: [],
    heads: [],
    absorberElement: -1,
    dt,
    time: 0,
    steps: 0,
    sums: new Float64Array(c.elements),
    idle: new Float64Array(0),
    lost: 0,
    mayPass: () => true,
    held: [],
  }
}
