import type { topsUnder } from '../../geometry/gaps'
import { placeOf } from '../../geometry/line'
import type { ConnectorPart, Worker } from '../../plan/types'
import { solveLoadedChain } from '../../solver/loaded'
import { type Corner, GRAVITY } from '../../solver/model'
import type { LineInput } from '../line-input'
import type { LineStatics } from '../line-statics'
import { beneath } from './beneath'
import type { Rest } from './types'

/** What a fall has left behind for good, m. */
export interface Lasting {
  torn: number
  absorber: number
}

/**
 * Where one worker hangs when all is still: the line under the body's weight with what the absorber has paid out, the
 * connector with what it has torn. Other bodies on the line are left out. Null where the line does not converge.
 */
export function restOf(
  below: ReturnType<typeof topsUnder>,
  input: LineInput,
  statics: LineStatics,
  corner: Corner,
  station: number,
  who: { worker: Worker; connector: ConnectorPart },
  lasting: Lasting,
): Rest | null {
  const line = statics.unloaded(corner.line, corner.grip)
  if (!line.ok) return null
  const place = placeOf(input.geometry, station)
  const whole = input.geometry.x[place.span + 1]! - input.geometry.x[place.span]!
  const weight = who.worker.mass * GRAVITY
  const head = input.geometry.heads[place.span]![2]
  let rope = head
  if (place.at > 1e-6 * whole && place.at < whole * (1 - 1e-6)) {
    const chain = line.value.chains[corner.grip === 'sliding' ? 0 : place.span]!
    const index = corner.grip === 'sliding' ? place.span : 0
    const paidOut = { ...chain, rope: chain.rope + lasting.absorber, absorber: null }
    const start = { H: line.value.spans[place.span]!.H, others: [] }
    const state = solveLoadedChain(paidOut, index, place.at, weight, start)
    if (!state) return null
    rope = head + state.height
  } else if (place.at > whole / 2) rope = input.geometry.heads[place.span + 1]![2]
  const { connector, worker } = who
  const slack = connector.type === 'retractable' ? Math.max(0, rope - place.top[2] - worker.dRingHeight) : 0
  const dRing = rope - connector.length - slack - lasting.torn - weight / connector.stiffness
  const feet = dRing - worker.dRingHeight - worker.harnessStretch
  const [x, y, top] = place.top
  return {
    dRing,
    feet,
    belowEdge: top - dRing,
    at: [x, y, feet],
    under: beneath(below.tops, x, y, top),
    unlooked: below.unlooked,
  }
}
