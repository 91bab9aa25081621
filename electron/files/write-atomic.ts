import { randomBytes } from 'node:crypto'
import * as realDisk from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'

/** The calls of the file system that a write needs; tests put a failing disk in its place. */
export type Disk = Pick<
  typeof realDisk,
  'open' | 'rename' | 'unlink' | 'link' | 'copyFile' | 'chmod' | 'stat' | 'realpath' | 'readdir'
>

export interface WriteOptions {
  /** Keep what the file held before as `.bak` beside it. */
  backup?: boolean
  disk?: Disk
}

const TEMP = '.fallroom-tmp'

/**
 * Writes a file so that at any moment the name holds either all of the old or all of the new: temporary file in the
 * same folder, fsync, rename, fsync of the folder. A link is followed, so that it stays a link. Throws the file
 * system's own errors, with the temporary file gone.
 */
export async function writeAtomic(path: string, bytes: Uint8Array | string, options: WriteOptions = {}) {
  const disk = options.disk ?? realDisk
  const target = await disk.realpath(path).catch(() => path)
  const temp = tempName(target)
  try {
    await writeThrough(disk, temp, bytes)
    await keepMode(disk, target, temp)
    if (options.backup) await keepBackup(disk, target)
    await renameHard(disk, temp, target)
  } catch (error) {
    await disk.unlink(temp).catch(() => {})
    throw error
  }
  await syncFolder(disk, dirname(target))
}

/** Removes temporary files that a killed program left beside `path`. Those of a running program stay. */
export async function sweepTemps(path: string, disk: Disk = realDisk): Promise<void> {
  const start = `.${basename(path)}.`
  const names = await disk.readdir(dirname(path)).catch(() => [] as string[])
  for (const name of names) {
    if (!name.startsWith(start) || !name.endsWith(TEMP)) continue
    const pid = Number(name.slice(start.length).split('-')[0])
    if (!isRunning(pid)) await disk.unlink(join(dirname(path), name)).catch(() => {})
  }
}

/** True if a process of this number runs, ours or not. */
export function isRunning(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM'
  }
}

function tempName(path: string): string {
  return join(dirname(path), `.${basename(path)}.${process.pid}-${randomBytes(6).toString('hex')}${TEMP}`)
}

async function writeThrough(disk: Disk, path: string, bytes: Uint8Array | string): Promise<void> {
  const file = await disk.open(path, 'wx')
  try {
    await file.writeFile(bytes)
    await file.sync()
  } finally {
    await file.close()
  }
}

async function keepMode(disk: Disk, from: string, to: string): Promise<void> {
  const old = await disk.stat(from).catch(() => null)
  if (old) await disk.chmod(to, old.mode & 0o7777).catch(() => {})
}

/** A second name for the old content, swapped in by rename, so that a half-made backup never replaces a whole one. */
async function keepBackup(disk: Disk, path: string): Promise<void> {
  const temp = tempName(`${path}.bak`)
  try {
    // Some disks know no second names; there the content is copied.
    await disk.link(path, temp).catch((error) => {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') throw error
      return disk.copyFile(path, temp)
    })
    await renameHard(disk, temp, `${path}.bak`)
  } catch (error) {
    await disk.unlink(temp).catch(() => {})
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error
  }
}

/** On Windows a virus scanner may hold a file open for a moment. */
async function renameHard(disk: Disk, from: string, to: string, tries = 6): Promise<void> {
  for (let left = tries; ; left -= 1) {
    try {
      return await disk.rename(from, to)
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code ?? ''
      const passing = process.platform === 'win32' && ['EPERM', 'EACCES', 'EBUSY'].includes(code)
      if (!passing || left <= 1) throw error
      await new Promise((resolve) => setTimeout(resolve, 60))
    }
  }
}

/** Makes the rename itself last through a power cut. Not every system can; it is no reason to fail a save. */
async function syncFolder(disk: Disk, folder: string): Promise<void> {
  const handle = await disk.open(folder, 'r').catch(() => null)
  await handle?.sync().catch(() => {})
  await handle?.close()
}
