import { expect, it } from 'vitest'
import { sample } from '../../../tests/support/sample'
import type { Finding } from '../../study/results'
import { study } from '../../study/study'
import { limitWords, ruleWord } from './words'

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

it.each(['thin-margins', 'much-to-put-right', 'four-girder-bay'])(
  'says the same of a rule with its margin and without it, in %s',
  (name) => {
    const { findings } = study(sample(name), { withoutTime: true }).results
    const told = findings.filter((f) => f.limit !== null && f.value !== f.limit && !ranges.has(f.rule))
    expect(told.length).toBeGreaterThan(10)
    const differ = told.filter((f) => limitWords(f, 'si') !== limitWords({ ...f, margin: null }, 'si'))
    expect(differ.map((f) => f.rule)).toEqual([])
  },
)

/** Without a margin nothing tells which end of a range is meant. */
const ranges = new Set(['eye-offset', 'worker-mass'])

it('has a name for every rule that speaks', () => {
  const { findings } = study(sample('much-to-put-right'), { withoutTime: true }).results
  expect(findings.filter((f) => !ruleWord[f.rule]).map((f) => f.rule)).toEqual([])
})
