import { expect, it } from 'vitest'
import { freeName } from './ids'

const named = (...names: string[]) => names.map((name) => ({ name }))

it('counts on from the number that a name ends with', () => {
  expect(freeName('Deck', named('Crane'))).toBe('Deck')
  expect(freeName('Deck', named('Deck'))).toBe('Deck 2')
  expect(freeName('Girder 2', named('Girder 2'))).toBe('Girder 3')
  expect(freeName('Girder 2', named('Girder 2', 'Girder 3', 'Girder 4'))).toBe('Girder 5')
  expect(freeName('B4', named('B4'))).toBe('B4 2')
})
