/**
 * How much of the picture a frame takes without a graphics processor:
 *
 * - turning: the camera moves. Half the sharpness, and without what is only seen through. No line gets lost in it.
 * - moving: something else moves, or the camera is held and rests. All there is, one sample a pixel.
 * - still: nothing has moved for a while and nothing is held. All there is, four samples a pixel.
 *
 * A frame may come long after it was asked for. What the hand does when it is drawn counts, not when it was asked for.
 */
export type Pace = 'turning' | 'moving' | 'still'

/** Samples along a pixel's side. */
export const SHARPNESS: Record<Pace, number> = { turning: 0.5, moving: 1, still: 2 }

export interface Seen {
  /** The camera stands elsewhere than in the frame before. */
  turned: boolean
  /** It stood elsewhere not long ago: the frame comes between two moves of the hand. */
  turnedLately: boolean
  /** A thing of the plan is being dragged. */
  dragging: boolean
  /** A button is down that turns the camera. */
  held: boolean
  /** Nothing was drawn for a while: the frame was asked for by the rest alone. */
  rested: boolean
}

export function paceOf({ turned, turnedLately, dragging, held, rested }: Seen): Pace {
  if (turned) return 'turning'
  if (dragging) return 'moving'
  if (rested) return held ? 'moving' : 'still'
  return turnedLately ? 'turning' : 'moving'
}

/** Of the frame that is being drawn; with a graphics processor every frame is whole. */
export const pace: { now: Pace } = { now: 'still' }
