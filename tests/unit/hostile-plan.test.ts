import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readModel } from '../../electron/files/models'
import { Host } from '../../electron/host'
import { readPlan } from '../../src/plan/read'

let folder: string
let host: Host
let sample: Record<string, unknown>
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'fallroom-'))
  host = new Host(join(folder, 'home'))
  const bay = fileURLToPath(new URL('../../samples/four-girder-bay.plan.json', import.meta.url))
  sample = JSON.parse(await readFile(bay, 'utf8'))
})
afterAll(async () => {
  await host.end()
  await rm(folder, { recursive: true, force: true })
})

/** As the window does it: the desk reads the text, the loader makes a plan of it or says why not. */
async function load(text: string) {
  const path = join(folder, 'plan.json')
  await writeFile(path, text)
  const opened = await host.openPath(path)
  return opened.ok ? readPlan(opened.value.text) : opened
}

const deep = 200_000

describe('a hostile plan', () => {
  it.each([
    ['arrays in arrays', '['.repeat(deep) + ']'.repeat(deep)],
    ['objects in objects', `${'{"a":'.repeat(deep)}1${'}'.repeat(deep)}`],
    ['an open end', '['.repeat(deep)],
    ['a long text', `"${'x'.repeat(5_000_000)}"`],
    ['a long array', `[${'0,'.repeat(1_000_000)}0]`],
    ['a long number', `{"format":"fallroom-plan","version":${'9'.repeat(100_000)}}`],
    ['a NUL', '\u0000'],
    ['nothing', ''],
  ])('of %s is refused with reasons', async (_, text) => {
    const read = await load(text)
    expect(read.ok).toBe(false)
    expect(JSON.stringify(read).length).toBeLessThan(200_000)
  })

  it('with deep nesting inside a whole plan does not break the loader', async () => {
    const text = JSON.stringify({ ...sample, extra: 0 }).replace(
      '"extra":0',
      `"extra":${'['.repeat(deep)}${']'.repeat(deep)}`,
    )
    const read = await load(text)
    expect(typeof read.ok).toBe('boolean')
  })

  it('with a girder twenty thousand times over is answered, not hung on', async () => {
    const girders = Array(20_000).fill((sample.girders as unknown[])[0])
    const read = await load(JSON.stringify({ ...sample, girders }))
    expect(read.ok).toBe(false)
  })

  it.each(['__proto__', 'constructor', 'prototype'])(
    'that reaches for %s changes nothing of the program',
    async (key) => {
      const text = JSON.stringify(sample).replace('{', `{"${key}":{"polluted":true,"toString":null},`)
      await load(text)
      expect(({} as Record<string, unknown>).polluted).toBeUndefined()
      expect(Object.prototype.toString.call({})).toBe('[object Object]')
      expect((Object as unknown as Record<string, unknown>).polluted).toBeUndefined()
    },
  )

  it('reads no model from anywhere but its own folder', async () => {
    await writeFile(join(folder, 'plan.json'), '{}')
    for (const file of [
      '../../etc/passwd',
      '/etc/passwd',
      '..\\..\\x.glb',
      'http://192.0.2.1/x.glb',
      'home/../../x.glb',
    ]) {
      expect(await readModel(join(folder, 'plan.json'), file)).toMatchObject({ ok: false, code: 'outside' })
    }
  })
})
