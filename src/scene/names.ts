/** Names of the scene's objects, so that tests, labels and fly-to find them by what they stand for. */
import { type Ref, refKey } from '../state/refs'

/** `girder:G1`, `stanchion:S2`, `tie-back:T1:strap`, `obstacle:O1`, as everywhere else in the window. */
export const objectName = refKey

export const roomName = (line: string): string => `room:${line}`
export const ropeName = (line: string): string => `rope:${line}`
export const fallingName = (line: string): string => `fallen:${line}`

/** The reference that an object's name stands for; null for objects that stand for nothing in the plan. */
export function refOfName(name: string): Ref | null {
  const [kind, id, foot] = name.split(':')
  const kinds = ['girder', 'loop-row', 'deck', 'line', 'stanchion', 'tie-back', 'worker', 'obstacle']
  if (!kind || !id || !kinds.includes(kind)) return null
  const ref: Ref = { kind: kind as Ref['kind'], id }
  return foot === 'strap' || foot === 'tensioner' ? { ...ref, foot } : ref
}
