import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, expect, it } from 'vitest'
import { readPlan } from '../../../src/plan/read'
import { study } from '../../../src/study/study'

const root = fileURLToPath(new URL('../../..', import.meta.url))
const folder = mkdtempSync(join(tmpdir(), 'fallroom-suggest-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const suggest = (...args: string[]) =>
  spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/suggest.ts', ...args], {
    cwd: root,
    encoding: 'utf8',
  })

it('writes a plan whose findings all hold by energy, and says what it proved', () => {
  const out = join(folder, 'out.json')
  const done = suggest(
    'samples/thin-margins.plan.json',
    '--line',
    'L1',
    '--energy-only',
    '--json',
    '--out',
    out,
  )
  expect(done.status, done.stderr).toBe(0)
  const told = JSON.parse(done.stdout) as { best: { stanchions: number }; claims: { fewest: string } }
  expect(told.claims.fewest).toBe('proven')
  const read = readPlan(readFileSync(out, 'utf8'))
  if (!read.ok) throw new Error(read.faults.map((f) => f.message).join('\n'))
  expect(read.plan.lines[0]!.stanchions).toHaveLength(told.best.stanchions)
  const { findings } = study(read.plan, { withoutTime: true }).results
  expect(findings.filter((f) => f.status === 'fail')).toEqual([])
})

it('says which rule stops a plan that no layout can mend', () => {
  const done = suggest('samples/much-to-put-right.plan.json', '--energy-only', '--json')
  expect(done.status, done.stderr).toBe(1)
  const told = JSON.parse(done.stdout) as { reasons: { rule: string }[] }
  expect(told.reasons.map((r) => r.rule)).toContain('free-fall')
})

it.each([
  [['samples/thin-margins.plan.json', '--line', 'no such line'], /no line/],
  [['samples/thin-margins.plan.json', '--from', 'here'], /--from/],
])('refuses %j', (args, words) => {
  const done = suggest(...args)
  expect(done.status).toBe(2)
  expect(done.stderr).toMatch(words)
  expect(done.stdout).toBe('')
})
