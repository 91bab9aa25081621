import { expect, it } from 'vitest'
import type { Finding } from '../../study/results'
import { limitWords } from './words'

const eye = (value: number, limit: number, margin: number): Finding => ({
  rule: 'eye-offset',
  subject: 'L1',
  status: 'pass',
  value,
  limit,
  margin,
  unit: 'm',
  text: '',
  source: '',
})

it('says of a range which end is nearer', () => {
  expect(limitWords(eye(1.6, 1.5, 0.1), 'si')).toMatch(/^at least 1\.50/)
  expect(limitWords(eye(2.0, 2.1, 0.1), 'si')).toMatch(/^at most 2\.10/)
  expect(limitWords(eye(2.3, 2.1, -0.2), 'si')).toMatch(/^at most 2\.10/)
})
