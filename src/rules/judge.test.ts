import { expect, it } from 'vitest'
import { holds } from './judge'

it('forgives the last bits of a figure by its size, and no more', () => {
  // A part in 1e9 of the limit, at least 1e-9 itself.
  expect(holds(5e6 - 4e-3, 5e6, 'at least')).toBe(true)
  expect(holds(5e6 - 6e-3, 5e6, 'at least')).toBe(false)
  expect(holds(5e6 + 4e-3, 5e6, 'at most')).toBe(true)
  expect(holds(5e6 + 6e-3, 5e6, 'at most')).toBe(false)
  expect(holds(-9e-10, 0, 'at least')).toBe(true)
  expect(holds(-2e-9, 0, 'at least')).toBe(false)
  expect(holds(5e6 - 4e-3, 5e6, 'less than')).toBe(false)
  expect(holds(5e6 - 6e-3, 5e6, 'less than')).toBe(true)
})
