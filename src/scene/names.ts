/** Names of the scene's objects, so that tests, labels and fly-to find them by what they stand for. */
import { refKey } from '../state/refs'

/** `girder:G1`, `stanchion:S2`, `tie-back:T1:strap`, `obstacle:O1`, as everywhere else in the window. */
export const objectName = refKey

export const roomName = (line: string): string => `room:${line}`
export const ropeName = (line: string): string => `rope:${line}`
export const fallingName = (line: string): string => `fallen:${line}`
