/** What the pictures need beside the results document: shapes in space, made by the study, never computed elsewhere. */
import type { LinePlace } from '../geometry/line'
import { placeOf } from '../geometry/line'
import type { Vec3 } from '../plan/types'
import { pointAt, type Segment } from '../solver/catenary'
import type { UnloadedLine } from '../solver/installed'
import type { LoadedChain } from '../solver/loaded'
import type { FallCase } from './energy-falls'
import type { LineInput } from './line-input'
import type { LineStudy } from './line-study'
import type { Fall } from './results'
import { studiedEnergyFall } from './studied-fall'

export interface LineDetail {
  id: string
  /** Heads of the stanchions in order, as measured. */
  heads: Vec3[]
  /** The rope as installed (nominal), a polyline from first to last head; empty where it is not known. */
  installedRope: Vec3[]
  /** The energy fall with the greatest clearance at the line's own grip, or null where none could be computed. */
  governing: Fall | null
  /** The rope of that fall at its lowest; empty where none is known. */
  saggedRope: Vec3[]
  /** Where the connector hangs on the sagged rope, the D-ring, and the feet of the body then (margin not included). */
  hangingAt: Vec3 | null
  dRingAt: Vec3 | null
  feetAt: Vec3 | null
}

/** Points along a segment for a picture. */
const STEPS = 12

/** Points of a segment that starts at (x, z) in the developed plane of its span. */
function segmentPoints(s: Segment, EA: number, w: number, x: number, z: number): [number, number][] {
  return Array.from({ length: STEPS + 1 }, (_, i) => {
    const at = pointAt(s, (s.L * i) / STEPS, EA, w)
    return [x + at.dx, z + at.dz]
  })
}

/** A point of a span's developed plane in space. */
function inSpace(input: LineInput, span: number, x: number, z: number): Vec3 {
  const a = input.geometry.heads[span]!
  const b = input.geometry.heads[span + 1]!
  const t = x / (input.geometry.x[span + 1]! - input.geometry.x[span]!)
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, z]
}

/** How far the first head of a span has moved towards the line under H, m. */
const shiftOf = (line: UnloadedLine, span: number, H: number): number => {
  const chain = line.chains[line.grip === 'sliding' ? 0 : span]!
  return span === 0 ? (H - chain.heldAt[0]) * chain.give[0] : 0
}

function freePoints(input: LineInput, s: Segment, EA: number, w: number, span: number, shift = 0): Vec3[] {
  const z = input.geometry.heads[span]![2]
  return segmentPoints(s, EA, w, shift, z).map(([x, y]) => inSpace(input, span, x, y))
}

/** The rope of a loaded line, from head to head. */
function loadedRope(input: LineInput, line: UnloadedLine, span: number, state: LoadedChain): Vec3[] {
  const { stiffness: EA, weight: w } = line.set
  return line.spans.flatMap((unloaded, i) => {
    if (i !== span) {
      const s = (line.grip === 'sliding' && state.others[i]) || unloaded
      return freePoints(input, s, EA, w, i, shiftOf(line, i, s.H))
    }
    const shift = shiftOf(line, i, state.H)
    const first = { H: state.H, V: state.at.V, L: state.at.L1 }
    const second = { H: state.H, V: state.at.first.E - state.P, L: state.at.L2 }
    const z = input.geometry.heads[i]![2]
    const left = segmentPoints(first, EA, w, shift, z)
    const [x, y] = left[STEPS]!
    const right = segmentPoints(second, EA, w, x, y)
    return [...left, ...right].map(([px, pz]) => inSpace(input, i, px, pz))
  })
}

/** The unloaded or installed rope, from head to head. */
function plainRope(input: LineInput, spans: Segment[], EA: number, w: number): Vec3[] {
  return spans.flatMap((s, i) => freePoints(input, s, EA, w, i))
}

/** The fall at the line's own grip that needs most room under the walking surface. */
function governingCase(study: LineStudy): FallCase | null {
  let best: { c: FallCase; clearance: number } | null = null
  study.energyCases.forEach((c, i) => {
    const clearance = study.falls.energy[i]!.fall.clearance
    if (c.corner.grip !== study.input.grip || clearance === null) return
    if (!best || clearance > best.clearance) best = { c, clearance }
  })
  return (best as { c: FallCase } | null)?.c ?? null
}

/** Where the body of a fall hangs at its lowest. */
function hanging(place: LinePlace, c: FallCase): Pick<LineDetail, 'hangingAt' | 'dRingAt' | 'feetAt'> {
  if (!c.fall.ok || c.height === null || c.freeFall === null)
    return { hangingAt: null, dRingAt: null, feetAt: null }
  const [x, y, top] = place.top
  const { drop, extension } = c.fall.value
  const dRing = top + c.worker.dRingHeight - c.freeFall - drop - extension
  const feet = dRing - c.worker.dRingHeight - c.worker.harnessStretch
  return { hangingAt: [x, y, top + c.height - drop], dRingAt: [x, y, dRing], feetAt: [x, y, feet] }
}

const made = new WeakMap<LineStudy, LineDetail>()

/** The pictures of one line; of the same study the same object, so that who shows it knows that nothing changed. */
export function lineDetail(study: LineStudy): LineDetail {
  const detail = made.get(study) ?? makeDetail(study)
  made.set(study, detail)
  return detail
}

function makeDetail(study: LineStudy): LineDetail {
  const { input, statics } = study
  const nominal = statics.installed('nominal')
  const c = governingCase(study)
  const line = c && statics.unloaded(c.corner.line, c.corner.grip)
  const state = c?.fall.ok ? c.fall.value.state : null
  return {
    id: study.id,
    heads: input.geometry.heads,
    installedRope: nominal.ok
      ? plainRope(input, nominal.value.spans, nominal.value.set.stiffness, nominal.value.set.weight)
      : [],
    governing: c && studiedEnergyFall(c, study.marginBelow).fall,
    saggedRope: c && state && line?.ok ? loadedRope(input, line.value, c.span, state) : [],
    ...(c
      ? hanging(placeOf(input.geometry, c.station), c)
      : { hangingAt: null, dRingAt: null, feetAt: null }),
  }
}
