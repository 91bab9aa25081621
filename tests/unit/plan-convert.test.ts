import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { convert as run, type Say } from '../../src/cli/convert-run'
import { planHash } from '../../src/plan/hash'
import { readParts } from '../../src/plan/part-list/read'
import { readPlan } from '../../src/plan/read'
import { sample } from './plan-support'

const ROOT = new URL('../..', import.meta.url).pathname
let folder = ''

async function convert(...args: string[]) {
  const said = { out: '', err: '' }
  const say: Say = {
    out: (text) => {
      said.out += text
    },
    error: (text) => {
      said.err += text
    },
  }
  return { status: await run(args, say), ...said }
}

const at = (name: string): string => join(folder, name)

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'fallroom-convert-'))
})

describe('npm run convert', () => {
  it('lays a plan out anew without changing what it says', async () => {
    const made = await convert('samples/thin-margins.plan.json')
    const read = readPlan(made.out)
    expect(made.status).toBe(0)
    expect(read.ok && planHash(read.plan)).toBe(planHash(sample()))
  })

  it('takes the parts out as CSV and brings them back as JSON', async () => {
    expect((await convert('samples/thin-margins.plan.json', '--out', at('parts.csv'))).status).toBe(0)
    const back = await convert(at('parts.csv'))
    expect(back.status).toBe(0)
    expect(readParts(back.out)).toEqual({ ok: true, parts: expect.any(Array) })
    expect(JSON.parse(back.out).parts).toEqual(
      sample().parts.map((p) => expect.objectContaining({ id: p.id, source: p.source })),
    )
  })

  it('writes over nothing unless told to, and keeps what was there', async () => {
    writeFileSync(at('there.json'), 'mine')
    const made = await convert('samples/thin-margins.plan.json', '--out', at('there.json'))
    expect([made.status, readFileSync(at('there.json'), 'utf8')]).toEqual([2, 'mine'])
    expect(made.err).toMatch(/there already/)
    expect(
      (await convert('samples/thin-margins.plan.json', '--out', at('there.json'), '--force')).status,
    ).toBe(0)
    expect(readFileSync(at('there.json.bak'), 'utf8')).toBe('mine')
  })

  it('tells with status 1 what it had to assume', async () => {
    const old = { ...structuredClone(sample()), version: 0 } as Record<string, unknown>
    writeFileSync(at('old.json'), JSON.stringify(old))
    const made = await convert(at('old.json'), '--out', at('new.json'))
    expect(made.status).toBe(1)
    expect(made.err).toMatch(/version 0; it was brought to version 1/)
    expect(JSON.parse(readFileSync(at('new.json'), 'utf8')).version).toBe(1)
  })

  it('writes nothing of a faulty file and tells every reason', async () => {
    const text = readFileSync(join(ROOT, 'samples/thin-margins.plan.json'), 'utf8')
    writeFileSync(
      at('bad.json'),
      text.replace('"pretension": 4450', '"pretension": "NaN"').replace('"mass": 105', '"mass": -5'),
    )
    const made = await convert(at('bad.json'), '--out', at('never.json'))
    expect([made.status, made.out]).toEqual([2, ''])
    expect(made.err).toMatch(/line \d+: \$\.lines\[0\]\.pretension: /)
    expect(made.err).toMatch(/line \d+: \$\.workers\[0\]\.mass: /)
    expect(() => readFileSync(at('never.json'))).toThrow()
  })

  it('has help, and words for a wrong call, a folder and a file that is not there', async () => {
    expect(await convert('--help')).toMatchObject({ status: 0, out: expect.stringContaining('Exit status') })
    const wrong = [
      [],
      ['a', 'b'],
      ['--what'],
      ['samples/thin-margins.plan.json', '--to', 'xml'],
      [folder],
      [at('none.json')],
    ]
    for (const args of wrong)
      expect(await convert(...args)).toMatchObject({
        status: 2,
        out: '',
        err: expect.stringMatching(/\w+ \w+/),
      })
  })

  it('is a command', () => {
    const args = [
      '--import',
      'tsx',
      'src/cli/convert.ts',
      'samples/thin-margins.plan.json',
      '--to',
      'canonical',
    ]
    const made = spawnSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8' })
    expect([made.status, made.stderr]).toEqual([0, ''])
    expect(made.stdout).toMatch(/^\{"basis":\{/)
  })
})
