import { expect, it } from 'vitest'
import { type Pace, paceOf, type Seen } from './pace'

const idle: Seen = { turned: false, turnedLately: false, dragging: false, held: false, rested: false }

it.each<[string, Partial<Seen>, Pace]>([
  ['nothing is known to rest', {}, 'moving'],
  ['the camera moved', { turned: true }, 'turning'],
  // A slow frame: the rest was told before it came, and the hand has moved on meanwhile.
  ['the camera moved after a rest was told', { turned: true, rested: true }, 'turning'],
  ['a frame between two moves of the hand', { turnedLately: true }, 'turning'],
  ['the hand rests and holds the camera', { turnedLately: true, held: true, rested: true }, 'moving'],
  ['the hand has let go', { turnedLately: true, rested: true }, 'still'],
  ['a thing is taken right after turning', { turnedLately: true, dragging: true }, 'moving'],
  ['a thing is held and rests', { dragging: true, rested: true }, 'moving'],
  ['nothing moved for a while', { rested: true }, 'still'],
])('%s', (_, seen, pace) => {
  expect(paceOf({ ...idle, ...seen })).toBe(pace)
})
