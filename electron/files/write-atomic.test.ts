import { spawn } from 'node:child_process'
import * as realDisk from 'node:fs/promises'
import { chmod, mkdtemp, readdir, readFile, rm, stat, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Disk, sweepTemps, writeAtomic } from './write-atomic'

let folder: string
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'fallroom-'))
})
afterEach(() => rm(folder, { recursive: true, force: true }))

/** A disk on which one call fails. */
function failing(call: keyof Disk, code: string): Disk {
  const fail = async () => {
    throw Object.assign(new Error(code), { code })
  }
  return { ...realDisk, [call]: fail }
}

describe('writeAtomic', () => {
  it('writes a new file and leaves nothing else behind', async () => {
    await writeAtomic(join(folder, 'a.json'), 'one', { backup: true })
    expect(await readdir(folder)).toEqual(['a.json'])
    expect(await readFile(join(folder, 'a.json'), 'utf8')).toBe('one')
  })

  it('keeps the last content as .bak', async () => {
    const path = join(folder, 'a.json')
    for (const text of ['one', 'two', 'three']) await writeAtomic(path, text, { backup: true })
    expect((await readdir(folder)).sort()).toEqual(['a.json', 'a.json.bak'])
    expect(await readFile(path, 'utf8')).toBe('three')
    expect(await readFile(`${path}.bak`, 'utf8')).toBe('two')
  })

  it('copies the backup where the disk knows no second names', async () => {
    const path = join(folder, 'a.json')
    await writeFile(path, 'one')
    await writeAtomic(path, 'two', { backup: true, disk: failing('link', 'EPERM') })
    expect(await readFile(`${path}.bak`, 'utf8')).toBe('one')
    expect(await readFile(path, 'utf8')).toBe('two')
  })

  it.each([
    ['open', 'ENOSPC'],
    ['rename', 'EIO'],
    ['rename', 'ENOSPC'],
  ] as const)('leaves the old file whole when %s fails with %s', async (call, code) => {
    const path = join(folder, 'a.json')
    await writeFile(path, 'one')
    await expect(writeAtomic(path, 'two', { disk: failing(call, code) })).rejects.toMatchObject({ code })
    expect(await readFile(path, 'utf8')).toBe('one')
    expect(await readdir(folder)).toEqual(['a.json'])
  })

  it('leaves the old file whole when the disk fills up half-way', async () => {
    const path = join(folder, 'a.json')
    await writeFile(path, 'one')
    await expect(writeAtomic(path, 'two', { disk: fillingDisk() })).rejects.toMatchObject({ code: 'ENOSPC' })
    expect(await readFile(path, 'utf8')).toBe('one')
    expect(await readdir(folder)).toEqual(['a.json'])
  })

  it('follows a link, and keeps the permissions', async () => {
    const path = join(folder, 'real.json')
    await writeFile(path, 'one')
    await chmod(path, 0o640)
    await symlink(path, join(folder, 'link.json'))
    await writeAtomic(join(folder, 'link.json'), 'two')
    expect(await readFile(path, 'utf8')).toBe('two')
    expect((await realDisk.lstat(join(folder, 'link.json'))).isSymbolicLink()).toBe(true)
    expect((await stat(path)).mode & 0o777).toBe(0o640)
  })
})

/** A disk that takes half of the bytes and is full then. */
function fillingDisk(): Disk {
  const open = async (path: string, flags: string) => {
    const file = await realDisk.open(path, flags)
    const writeFile = async (data: string) => {
      await file.write(data.slice(0, data.length / 2))
      throw Object.assign(new Error('full'), { code: 'ENOSPC' })
    }
    return { writeFile, sync: () => file.sync(), close: () => file.close() }
  }
  return { ...realDisk, open } as unknown as Disk
}

describe('sweepTemps', () => {
  it('removes what a dead program left, and nothing of a living one', async () => {
    const dead = await deadProcess()
    const left = `.a.json.${dead}-0123456789ab.fallroom-tmp`
    const live = `.a.json.${process.pid}-0123456789ab.fallroom-tmp`
    for (const name of ['a.json', left, live]) await writeFile(join(folder, name), '')
    await sweepTemps(join(folder, 'a.json'))
    expect((await readdir(folder)).sort()).toEqual([live, 'a.json'])
  })
})

/** The number of a process that has ended. */
function deadProcess(): Promise<number> {
  const child = spawn(process.execPath, ['-e', ''])
  return new Promise((resolve) => child.on('exit', () => resolve(child.pid ?? 0)))
}
