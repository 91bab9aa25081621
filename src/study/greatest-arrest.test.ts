import { expect, it } from 'vitest'
import { sample } from '../../tests/support/sample'
import { greatestArrest } from './greatest-arrest'
import { study } from './study'

it('is that of a fall beside a stanchion where the line is soft, as the rule on the force tells it', () => {
  const { results } = study(sample('much-to-put-right'), { withoutTime: true })
  const line = results.lines[0]!
  const told = results.findings.filter((f) => f.rule === 'arrest-force').map((f) => f.value!)
  expect(line.governing.arrestForce!).toBeLessThan(Math.max(...told) * 0.95)
  expect(greatestArrest(results, line)).toBe(Math.max(...told))
})

it('is not known where one worker’s is not', () => {
  const { results } = study(sample('thin-margins'), { withoutTime: true })
  const line = results.lines[0]!
  const findings = results.findings.map((f) =>
    f.rule === 'arrest-force' ? { ...f, status: 'unknown' as const, value: null } : f,
  )
  expect(greatestArrest({ findings }, line)).toBeNull()
})
