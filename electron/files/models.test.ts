import { mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { copyModels, keepModel, readModel } from './models'

let folder: string
let plan: string
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'fallroom-'))
  await mkdir(join(folder, 'job', 'models'), { recursive: true })
  plan = join(folder, 'job', 'plan.json')
  await writeFile(plan, '{}')
  await writeFile(join(folder, 'job', 'lift.glb'), 'lift')
  await writeFile(join(folder, 'job', 'models', 'crane.obj'), 'crane')
  await writeFile(join(folder, 'secret.glb'), 'secret')
})
afterEach(() => rm(folder, { recursive: true, force: true }))

describe('readModel', () => {
  it.each([
    ['lift.glb', 'lift'],
    ['./lift.glb', 'lift'],
    ['models/crane.obj', 'crane'],
    ['models\\crane.obj', 'crane'],
  ])('reads %s beside the plan', async (file, content) => {
    const said = await readModel(plan, file)
    expect(said.ok && Buffer.from(said.value.bytes).toString()).toBe(content)
  })

  it.each([
    '../secret.glb',
    '..\\secret.glb',
    'models/../../secret.glb',
    '/etc/passwd',
    '/etc/passwd.glb',
    'C:\\secret.glb',
    'c:secret.glb',
    '\\\\server\\share\\x.glb',
    'file:///etc/passwd.glb',
    'http://192.0.2.1/x.glb',
    'lift.glb\u0000.txt',
    'con.glb',
    'models/ ../secret.glb',
    '.. /secret.glb',
    '.../secret.glb',
    '',
    'x'.repeat(5000),
    'plan.json',
    '.ssh/id_rsa',
  ])('refuses %j', async (file) => {
    expect(await readModel(plan, file)).toMatchObject({ ok: false, code: 'outside' })
  })

  it('takes percent signs as they are', async () => {
    expect(await readModel(plan, '%2e%2e/secret.glb')).toMatchObject({ ok: false, code: 'missing' })
  })

  it.skipIf(process.platform === 'win32')('refuses a link that leads out of the folder', async () => {
    await symlink(join(folder, 'secret.glb'), join(folder, 'job', 'link.glb'))
    await symlink(folder, join(folder, 'job', 'up'))
    expect(await readModel(plan, 'link.glb')).toMatchObject({ ok: false, code: 'outside' })
    expect(await readModel(plan, 'up/secret.glb')).toMatchObject({ ok: false, code: 'outside' })
  })

  it('says what is missing and what is a folder', async () => {
    await mkdir(join(folder, 'job', 'dir.glb'))
    expect(await readModel(plan, 'gone.glb')).toMatchObject({ code: 'missing' })
    expect(await readModel(plan, 'dir.glb')).toMatchObject({ code: 'not-a-file' })
  })
})

describe('keepModel', () => {
  const lift = Buffer.from('another lift')

  it('never goes over a different file of that name', async () => {
    expect(await keepModel(plan, { name: 'lift.glb', bytes: lift })).toEqual({
      ok: true,
      value: 'lift-2.glb',
    })
    expect(await keepModel(plan, { name: 'lift.glb', bytes: lift })).toEqual({
      ok: true,
      value: 'lift-2.glb',
    })
    expect(await readFile(join(folder, 'job', 'lift.glb'), 'utf8')).toBe('lift')
  })

  it.each(['../x.glb', 'a/x.glb', '/x.glb', 'plan.json', '', 'x'])('refuses the name %j', async (name) => {
    expect(await keepModel(plan, { name, bytes: lift })).toMatchObject({ ok: false, code: 'bad-request' })
    expect(await readdir(folder)).toEqual(['job', 'secret.glb'])
  })
})

describe('copyModels', () => {
  it('takes the models along into the new folder, and none from elsewhere', async () => {
    const mesh = (file: string) => ({ kind: 'mesh', file })
    const text = JSON.stringify({
      obstacles: [mesh('lift.glb'), mesh('models/crane.obj'), mesh('../secret.glb')],
    })
    await mkdir(join(folder, 'new'))
    await copyModels(text, plan, join(folder, 'new', 'plan.json'))
    const there = await readdir(join(folder, 'new'), { recursive: true })
    expect(there.sort()).toEqual(['lift.glb', 'models', join('models', 'crane.obj')])
  })
})
