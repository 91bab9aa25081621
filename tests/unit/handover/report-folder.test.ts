import * as realDisk from 'node:fs/promises'
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type FolderDisk, MANIFEST, writeFolder } from '../../../src/cli/report-folder'

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)
const files = [
  { name: 'a.txt', bytes: bytes('one') },
  { name: 'deep/b.txt', bytes: bytes('two') },
]

let around: string
beforeEach(async () => {
  around = await mkdtemp(join(tmpdir(), 'report-'))
})
afterEach(() => rm(around, { recursive: true, force: true }))

const failing = (call: 'writeFile' | 'rename', code: string, at: number): FolderDisk => {
  let count = 0
  const fail = async (...args: unknown[]) => {
    count++
    if (count === at) throw Object.assign(new Error(code), { code })
    return (realDisk[call] as (...a: unknown[]) => Promise<void>)(...args)
  }
  return { ...realDisk, [call]: fail } as FolderDisk
}

describe('a hand-over on disk', () => {
  it('is there whole, with a list of its files', async () => {
    const out = join(around, 'out')
    expect(await writeFolder(out, files)).toEqual({ ok: true, value: out })
    expect(await readFile(join(out, 'deep', 'b.txt'), 'utf8')).toBe('two')
    expect(JSON.parse(await readFile(join(out, MANIFEST), 'utf8')).files).toEqual(['a.txt', 'deep/b.txt'])
    expect(await readdir(around)).toEqual(['out'])
  })

  it('takes the place of an earlier one, whole, and leaves nothing of it', async () => {
    const out = join(around, 'out')
    await writeFolder(out, [...files, { name: 'old.txt', bytes: bytes('old') }])
    expect((await writeFolder(out, files)).ok).toBe(true)
    expect((await readdir(out)).sort()).toEqual(['a.txt', 'deep', MANIFEST])
    expect(await readdir(around)).toEqual(['out'])
  })

  it('fills an empty folder that is there', async () => {
    const out = join(around, 'out')
    await mkdir(out)
    expect((await writeFolder(out, files)).ok).toBe(true)
  })

  it('leaves a folder with other files alone, also one beside an earlier hand-over', async () => {
    const out = join(around, 'out')
    await writeFolder(out, files)
    await writeFile(join(out, 'mine.txt'), 'mine')
    const told = await writeFolder(out, files)
    expect(told).toMatchObject({ ok: false, lines: [expect.stringContaining('mine.txt')] })
    expect(await readFile(join(out, 'mine.txt'), 'utf8')).toBe('mine')
  })

  it.each([1, 2, 3])('leaves nothing behind when the disk is full at file %i', async (at) => {
    const out = join(around, 'out')
    const told = await writeFolder(out, files, failing('writeFile', 'ENOSPC', at))
    expect(told).toMatchObject({ ok: false, lines: [expect.stringContaining('disk is full')] })
    expect(await readdir(around)).toEqual([])
  })

  it.each([1, 2])('keeps the earlier one when rename %i fails', async (at) => {
    const out = join(around, 'out')
    await writeFolder(out, [{ name: 'old.txt', bytes: bytes('old') }])
    const told = await writeFolder(out, files, failing('rename', 'EACCES', at))
    expect(told.ok).toBe(false)
    expect((await readdir(out)).sort()).toEqual([MANIFEST, 'old.txt'])
    expect(await readdir(around)).toEqual(['out'])
  })

  it('makes no tree of folders for a mistyped path, and says what is wrong', async () => {
    const told = await writeFolder(join(around, 'no', 'such', 'place'), files)
    expect(told.ok).toBe(false)
    expect(await readdir(around)).toEqual([])
    await writeFile(join(around, 'file'), '')
    expect(await writeFolder(join(around, 'file'), files)).toMatchObject({
      ok: false,
      lines: [expect.stringContaining('is a file')],
    })
  })
})
