import * as realDisk from 'node:fs/promises'
import { chmod, mkdir, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { OpenedFile, Said } from '../../src/desk/bridge'
import { PlanFiles } from './plan-files'
import type { Disk } from './write-atomic'

const text = (title: string, version = 1) => JSON.stringify({ format: 'fallroom-plan', version, title })

let folder: string
let path: string
let files: PlanFiles
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'fallroom-'))
  path = join(folder, 'a.json')
  files = new PlanFiles()
  await writeFile(path, text('one'))
})
afterEach(() => rm(folder, { recursive: true, force: true }))

function opened(said: Said<OpenedFile>): OpenedFile {
  if (!said.ok) throw new Error(said.why)
  return said.value
}

describe('opening', () => {
  it('gives the text and an id that is no path', async () => {
    const file = opened(await files.open(path))
    expect(file).toMatchObject({ name: 'a.json', place: path, readOnly: null, text: text('one') })
    expect(file.id).not.toContain('a.json')
  })

  it.each([
    ['a missing file', 'missing', 'gone.json'],
    ['a folder', 'not-a-file', '.'],
  ])('refuses %s in plain words', async (_, code, name) => {
    expect(await files.open(join(folder, name))).toMatchObject({ ok: false, code })
  })

  it('refuses a file of 200 MB before reading it', async () => {
    const big = await realDisk.open(path, 'w')
    await big.truncate(200 * 1024 * 1024)
    await big.close()
    expect(await files.open(path)).toEqual({
      ok: false,
      code: 'too-large',
      why: 'a.json is 200 MB; at most 64 MB can be opened.',
    })
  })

  it('refuses what is no text', async () => {
    await writeFile(path, Buffer.from([0xff, 0xfe, 0x00, 0xd8]))
    expect(await files.open(path)).toMatchObject({
      ok: false,
      why: 'a.json is not a text file, so it is no plan.',
    })
  })

  it.skipIf(process.platform === 'win32')('refuses a device', async () => {
    expect(await files.open('/dev/zero')).toMatchObject({ ok: false, code: 'not-a-file' })
  })
})

describe('saving', () => {
  it('saves to where the plan lies, and keeps the last copy', async () => {
    const { id } = opened(await files.open(path))
    expect(await files.save(id, text('two'), false)).toMatchObject({ ok: true, value: { id, place: path } })
    expect(await readFile(path, 'utf8')).toBe(text('two'))
    expect(await readFile(`${path}.bak`, 'utf8')).toBe(text('one'))
    expect(await files.save(id, text('three'), false)).toMatchObject({ ok: true })
  })

  it('notices that someone else changed the file, and asks before going over it', async () => {
    const { id } = opened(await files.open(path))
    await writeFile(path, text('theirs'))
    expect(await files.state(id)).toMatchObject({ value: { exists: true, changed: true } })
    expect(await files.save(id, text('mine'), false)).toMatchObject({ ok: false, code: 'changed-on-disk' })
    expect(await readFile(path, 'utf8')).toBe(text('theirs'))
    expect(await files.save(id, text('mine'), true)).toMatchObject({ ok: true })
    expect(await readFile(`${path}.bak`, 'utf8')).toBe(text('theirs'))
  })

  it('does not call a touched file changed', async () => {
    const { id } = opened(await files.open(path))
    await writeFile(path, text('one'))
    expect(await files.state(id)).toMatchObject({ value: { changed: false } })
  })

  it('writes a deleted file anew', async () => {
    const { id } = opened(await files.open(path))
    await rm(path)
    expect(await files.save(id, text('two'), false)).toMatchObject({ ok: true })
    expect(await readFile(path, 'utf8')).toBe(text('two'))
  })

  it('never saves over a plan of a newer version, asked or not', async () => {
    await writeFile(path, text('newer', 2))
    const file = opened(await files.open(path))
    expect(file.readOnly).toContain('newer Fallroom')
    for (const overwrite of [false, true]) {
      expect(await files.save(file.id, text('mine'), overwrite)).toMatchObject({ code: 'newer-version' })
    }
    expect(await files.saveTo(path, text('mine'))).toMatchObject({ code: 'newer-version' })
    expect(await readFile(path, 'utf8')).toBe(text('newer', 2))
  })

  it('says that a file is marked read-only, and leaves it', async () => {
    await chmod(path, 0o444)
    const file = opened(await files.open(path))
    expect(file.readOnly).toBe('a.json is marked read-only. Save your changes under another name.')
    expect(await files.save(file.id, text('mine'), true)).toMatchObject({ code: 'read-only' })
    expect(await readFile(path, 'utf8')).toBe(text('one'))
  })

  it('says that the disk is full, and nothing is lost', async () => {
    const full = { ...realDisk, open: failWith('ENOSPC') } as unknown as Disk
    const onFull = new PlanFiles(full)
    const { id } = opened(await onFull.open(path))
    const said = await onFull.save(id, text('two'), false)
    expect(said).toMatchObject({ ok: false, code: 'disk-full' })
    expect(!said.ok && said.why).toContain(
      'The disk is full, so a.json was not written. Nothing was changed.',
    )
    expect(await readFile(path, 'utf8')).toBe(text('one'))
  })

  it('refuses to write what is no plan', async () => {
    const { id } = opened(await files.open(path))
    for (const junk of ['', '{', '[]', '{"format":"other"}', 'null']) {
      expect(await files.save(id, junk, true)).toMatchObject({ code: 'bad-request' })
    }
    expect(await readFile(path, 'utf8')).toBe(text('one'))
  })

  it('does not let a damaged file push out the good backup', async () => {
    const { id } = opened(await files.open(path))
    await files.save(id, text('two'), false)
    await writeFile(path, '{"format":"fallroom-pl')
    await files.save(id, text('three'), true)
    expect(await readFile(`${path}.bak`, 'utf8')).toBe(text('one'))
  })

  it('knows no id that it did not give', async () => {
    expect(await files.save(path, text('x'), true)).toMatchObject({ code: 'no-place' })
    expect(await files.save(null, text('x'), true)).toMatchObject({ code: 'no-place' })
  })

  it('refuses a folder as a place', async () => {
    await mkdir(join(folder, 'sub'))
    expect(await files.saveTo(join(folder, 'sub'), text('x'))).toMatchObject({ code: 'not-a-file' })
    expect((await stat(join(folder, 'sub'))).isDirectory()).toBe(true)
  })

  it('keeps the order of saves that overlap', async () => {
    const { id } = opened(await files.open(path))
    const titles = Array.from({ length: 20 }, (_, index) => `save ${index}`)
    await Promise.all(titles.map((title) => files.save(id, text(title), false)))
    expect(await readFile(path, 'utf8')).toBe(text('save 19'))
    expect((await readdir(folder)).sort()).toEqual(['a.json', 'a.json.bak'])
  })
})

function failWith(code: string) {
  return async () => {
    throw Object.assign(new Error(code), { code })
  }
}
