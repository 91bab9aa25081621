import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { planHash } from '../../../src/plan/hash'
import { samplePlan } from './made'

const around = mkdtempSync(join(tmpdir(), 'report-cli-'))
afterAll(() => rmSync(around, { recursive: true, force: true }))

const run = (verb: 'report' | 'diff', ...args: string[]) =>
  spawnSync(process.execPath, ['--import', 'tsx', `src/cli/${verb}.ts`, ...args], { encoding: 'utf8' })

const SAMPLE = 'samples/thin-margins.plan.json'

describe('the report verb', () => {
  it('hands over a whole folder for a plan of no failing finding', () => {
    const out = join(around, 'whole')
    const done = run('report', SAMPLE, '--out', out, '--languages', 'en', '--date', '2026-03-14')
    expect(done.stderr).toBe('')
    expect(done.status).toBe(0)
    for (const name of [
      'calculation-package.pdf',
      'results.json',
      'fall-room.glb',
      'fall-room.stl',
      'tables/findings.csv',
      'tags/tags-en.pdf',
    ]) {
      expect(existsSync(join(out, name)), name).toBe(true)
      expect(done.stdout).toContain(name)
    }
    const results = JSON.parse(readFileSync(join(out, 'results.json'), 'utf8'))
    expect(results.planHash).toBe(planHash(samplePlan()))
    expect(readFileSync(join(out, 'calculation-package.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
  })

  it.each([
    [['--out', 'x'], 'Name one plan'],
    [[SAMPLE], 'Name a folder with --out'],
    [[SAMPLE, '--out', 'x', '--languages', 'de'], '--languages knows en, es, fr'],
    [[SAMPLE, '--out', 'x', '--date', 'someday'], 'is no day'],
    [['gone.plan.json', '--out', join(around, 'none')], 'gone.plan.json'],
    [[SAMPLE, '--out', join(SAMPLE, 'under')], 'file'],
  ])('refuses %j with status 2, says why, and writes nothing', (args, why) => {
    const done = run('report', ...args)
    expect(done.status).toBe(2)
    expect(done.stderr).toContain(why)
    expect(done.stdout).toBe('')
    expect(existsSync('x')).toBe(false)
  })
})

describe('the diff verb', () => {
  it('tells sameness by status 0 and difference by status 1', () => {
    const same = run('diff', SAMPLE, SAMPLE, '--energy-only', '--json')
    expect(same.status).toBe(0)
    expect(JSON.parse(same.stdout)).toMatchObject({ format: 'fallroom-diff', same: true, changes: [] })
    const other = run('diff', SAMPLE, 'samples/much-to-put-right.plan.json', '--energy-only')
    expect(other.status).toBe(1)
    expect(other.stdout).toContain('What moved or changed')
    expect(run('diff', SAMPLE, 'gone.json').status).toBe(2)
  })
})
