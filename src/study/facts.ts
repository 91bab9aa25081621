/** The facts of one line that rules judge: the worst of every figure over the corners that count. */
import {
  type Demand,
  type Corner as FactCorner,
  type Known,
  type LegFacts,
  type LineFacts,
  type StanchionFacts,
  type TieBackFacts,
  type WorkerFacts,
  worstDemand,
} from '../rules/context'
import { boltEdgeDistance, straightCapacity } from '../solver/bracket-capacity'
import { strapLengths } from '../solver/lengths'
import type { BesideCase } from './energy-falls'
import type { InstalledStudy } from './installed'
import type { LineInput, StanchionInput, TieBackInput } from './line-input'
import type { Fall } from './results'
import { casesOf, demandOf, loopDemand, type StanchionCase } from './stanchions'
import { factCorner, type StudiedFall } from './studied-fall'

/** What is known of the falls of one line. */
export interface LineFalls {
  energy: StudiedFall[]
  dynamic: StudiedFall[]
  beside: BesideCase[]
  /** Why there are no falls in time, where there are none. */
  noDynamic: string | null
}

const known = (value: number | null, why: string | null): Known =>
  value === null ? { unknown: why ?? 'it was not computed' } : value

/** The worst of one figure over falls. */
export function worstOf(falls: StudiedFall[], figure: (f: Fall) => number | null, none?: string): Demand {
  const corners = falls.map((f) => ({ value: known(figure(f.fall), f.why), corner: factCorner(f.fall) }))
  return worstDemand(corners, none)
}

const ownGrip = (input: LineInput, falls: StudiedFall[]): StudiedFall[] =>
  falls.filter((f) => f.fall.grip === input.grip)

/** Falls beside a stanchion as corners; the set of the line does not matter there. */
function besideCorner(input: LineInput, c: BesideCase): FactCorner {
  return {
    method: 'energy',
    grip: input.grip,
    line: 'stiff',
    connector: c.end,
    span: null,
    worker: c.worker.id,
    beside: c.stanchion,
  }
}

function workerFacts(input: LineInput, falls: LineFalls): WorkerFacts[] {
  const own = [...ownGrip(input, falls.energy), ...ownGrip(input, falls.dynamic)]
  return input.workers.map(({ worker, connector }) => {
    const mine = own.filter((f) => f.fall.worker === worker.id)
    const beside = falls.beside.filter((c) => c.worker.id === worker.id)
    const worst = (figure: (f: Fall) => number | null, atHead: (c: BesideCase) => Known): Demand =>
      worstDemand([
        ...mine.map((f) => ({ value: known(figure(f.fall), f.why), corner: factCorner(f.fall) })),
        ...beside.map((c) => ({ value: atHead(c), corner: besideCorner(input, c) })),
      ])
    const energy =
      (pick: 'arrestForce' | 'extension' | 'torn') =>
      (c: BesideCase): Known =>
        c.fall.ok ? c.fall.value[pick] : { unknown: c.fall.why }
    return {
      worker,
      connector,
      freeFall: worst(
        (f) => f.freeFall,
        (c) => c.freeFall,
      ),
      arrestForce: worst((f) => f.arrestForce, energy('arrestForce')),
      extension: worst((f) => f.connectorExtension, energy('extension')),
      torn: worst((f) => f.connectorTorn ?? null, energy('torn')),
    }
  })
}

function stanchionFacts(
  input: LineInput,
  s: StanchionInput,
  own: { falls: StudiedFall[]; cases: StanchionCase[] },
  held: { falls: StudiedFall[]; cases: StanchionCase[] },
): StanchionFacts {
  const { row, loops, before, after } = s.engaged
  const axial = demandOf(own.falls, own.cases, (c) => c.shares.axial)
  const lift = demandOf(own.falls, own.cases, (c) => Math.max(0, -c.shares.axial))
  const lifts = typeof lift.value !== 'number' || lift.value > 0
  return {
    stanchion: s.stanchion,
    part: s.part,
    bracket: s.bracket,
    isEnd: s.isEnd,
    tieBackCount: s.tieBacks.length,
    row,
    engaged: loops.map((l) => ({ index: l.index, station: l.station })),
    beside: { before, after },
    shaft: demandOf(own.falls, own.cases, (c) => c.shares.shaft),
    axial,
    ...(lifts ? { uplift: lift } : {}),
    heldShaft: demandOf(held.falls, held.cases, (c) => c.shares.shaft),
    heldAxial: demandOf(held.falls, held.cases, (c) => c.shares.axial),
    loopPull: loopDemand(own.falls, own.cases),
    loopCapacity: row && straightCapacity(row.barDiameter, row.yieldStress),
    boltEdge: boltEdgeDistance(input.girder.section.topWidth, s.stanchion.offset, s.bracket.boltsAcross),
  }
}

function legFacts(t: TieBackInput, index: 0 | 1, force: Demand): LegFacts | null {
  const leg = t.legs[index]
  if (!leg.loop) return null
  return {
    role: leg.which,
    row: leg.loop.row,
    index: leg.loop.index,
    station: leg.loop.station,
    along: leg.along,
    across: leg.across,
    length: leg.length,
    angle: leg.angle,
    force,
    farSide: leg.farSide,
  }
}

function tieBackFacts(
  s: StanchionInput,
  own: { falls: StudiedFall[]; cases: StanchionCase[] },
): TieBackFacts[] {
  return s.tieBacks.flatMap((t, k) => {
    const force = (leg: 0 | 1): Demand =>
      demandOf(own.falls, own.cases, (c) => c.shares.legs[2 * k + leg] ?? 0)
    const strap = legFacts(t, 0, force(0))
    const tensioner = legFacts(t, 1, force(1))
    if (!strap || !tensioner) return []
    const between: Known =
      strap.row === tensioner.row
        ? Math.max(0, Math.abs(strap.index - tensioner.index) - 1)
        : { unknown: 'its two loops are in different rows' }
    const lengths = strapLengths({
      legs: [strap.length, tensioner.length],
      partLength: t.part.length,
      wrapLength: t.part.wrapLength,
    })
    return [
      {
        tieBack: t.tieBack,
        part: t.part,
        stanchion: s.stanchion,
        height: s.part.height,
        legs: [strap, tensioner] as [LegFacts, LegFacts],
        loopsBetween: between,
        strapNeeded: lengths.needed,
      },
    ]
  })
}

const numberOf = (d: Demand): Known => d.value

/** All facts of one line. */
export function lineFacts(input: LineInput, installed: InstalledStudy, falls: LineFalls): LineFacts {
  const energy = ownGrip(input, falls.energy)
  const dynamic = ownGrip(input, falls.dynamic)
  const own = [...energy, ...dynamic]
  const held = [...falls.energy, ...falls.dynamic].filter((f) => f.fall.grip === 'held')
  const per = input.stanchions.map((_, i) => ({
    own: { falls: own, cases: casesOf(input, i, own) },
    held: { falls: held, cases: casesOf(input, i, held) },
  }))
  const none = falls.noDynamic ?? 'no fall in time was computed at the line’s own grip'
  return {
    line: input.line,
    girder: input.girder,
    wireRope: input.rope,
    absorber: input.absorber,
    hardware: input.hardware,
    spans: input.geometry.slopes.map((slope, i) => ({
      length: input.geometry.stations[i + 1]! - input.geometry.stations[i]!,
      slope,
    })),
    tension: worstOf(own, (f) => f.tension),
    heldTension: worstOf(held, (f) => f.tension),
    energyTension: numberOf(worstOf(energy, (f) => f.tension)),
    timeTension: numberOf(worstOf(dynamic, (f) => f.tension, none)),
    absorberExtension: input.absorber && worstOf(own, (f) => f.absorberExtension),
    eyeOffset: known(installed.results.eyeOffset, installed.why),
    workers: workerFacts(input, falls),
    stanchions: input.stanchions.map((s, i) => stanchionFacts(input, s, per[i]!.own, per[i]!.held)),
    tieBacks: input.stanchions.flatMap((s, i) => tieBackFacts(s, per[i]!.own)),
  }
}
