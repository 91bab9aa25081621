/** Writes a hand-over as one folder: whole or not there. */
import { randomBytes } from 'node:crypto'
import * as realDisk from 'node:fs/promises'
import { basename, dirname, join, resolve, sep } from 'node:path'
import { fileFault } from '../../electron/files/fault'
import type { HandoverFile } from '../handover/files/hand-over'
import { failed, type Tried } from './plan-file'

/** Names every file of a hand-over, so that a later one knows what it may replace. */
export const MANIFEST = 'hand-over.json'

/** The calls of the file system that are needed; tests put a failing disk in its place. */
export type FolderDisk = Pick<
  typeof realDisk,
  'mkdir' | 'writeFile' | 'rename' | 'rm' | 'readdir' | 'readFile' | 'stat' | 'rmdir'
>

const code = (error: unknown): string => (error as NodeJS.ErrnoException | null)?.code ?? ''

/** A fault in the words of the other verbs; whatever went wrong, nothing half-made stays. */
const told = (error: unknown, name: string) => {
  const fault = fileFault(error, name)
  return failed(fault.why)
}

type Standing = 'absent' | 'empty' | 'ours'

/** What stands at the folder's place: nothing, an empty folder, an earlier hand-over; anything else is left alone. */
export async function standingOf(path: string, disk: FolderDisk = realDisk): Promise<Tried<Standing>> {
  const names = await disk.readdir(path, { recursive: true, withFileTypes: true }).catch((e) => code(e))
  if (names === 'ENOENT') return { ok: true, value: 'absent' }
  if (names === 'ENOTDIR') return failed(`${path} is a file, not a folder.`)
  if (typeof names === 'string') return failed(`${path} cannot be looked into (${names}).`)
  if (names.length === 0) return { ok: true, value: 'empty' }
  const known = await manifestOf(path, disk)
  const files = names.filter((n) => !n.isDirectory())
  const foreign = files
    .map((n) =>
      join(n.parentPath, n.name)
        .slice(resolve(path).length + 1)
        .split(sep)
        .join('/'),
    )
    .filter((name) => name !== MANIFEST && !known.has(name))
  if (known.size > 0 && foreign.length === 0) return { ok: true, value: 'ours' }
  const some = foreign.slice(0, 3).join(', ')
  return failed(
    `${path} holds other files (${some}). Nothing was written: name another folder or an empty one.`,
  )
}

async function manifestOf(path: string, disk: FolderDisk): Promise<Set<string>> {
  try {
    const read = JSON.parse(String(await disk.readFile(join(path, MANIFEST)))) as { files?: unknown }
    return new Set(Array.isArray(read.files) ? read.files.filter((f) => typeof f === 'string') : [])
  } catch {
    return new Set()
  }
}

/** Writes beside the folder first and puts it in place by one rename; an earlier hand-over is kept until then. */
export async function writeFolder(
  path: string,
  files: readonly HandoverFile[],
  disk: FolderDisk = realDisk,
): Promise<Tried<string>> {
  const target = resolve(path)
  const standing = await standingOf(target, disk)
  if (!standing.ok) return standing
  const mark = `.${basename(target)}.${process.pid}-${randomBytes(4).toString('hex')}`
  const temp = join(dirname(target), `${mark}.fallroom-tmp`)
  const old = join(dirname(target), `${mark}.fallroom-old`)
  try {
    await writeAll(temp, files, disk)
    await swap(target, temp, old, standing.value, disk)
    return { ok: true, value: target }
  } catch (error) {
    await disk.rm(temp, { recursive: true, force: true }).catch(() => {})
    return told(error, path)
  }
}

async function writeAll(temp: string, files: readonly HandoverFile[], disk: FolderDisk): Promise<void> {
  // The folder's parent must be there: a mistyped path makes no tree of folders.
  await disk.mkdir(temp)
  for (const file of files) {
    const place = join(temp, ...file.name.split('/'))
    await disk.mkdir(dirname(place), { recursive: true })
    await disk.writeFile(place, file.bytes, { flush: true })
  }
  const list = { format: 'fallroom-hand-over', files: files.map((f) => f.name) }
  await disk.writeFile(join(temp, MANIFEST), `${JSON.stringify(list, null, 1)}\n`, { flush: true })
}

async function swap(
  target: string,
  temp: string,
  old: string,
  standing: Standing,
  disk: FolderDisk,
): Promise<void> {
  if (standing === 'empty') await disk.rmdir(target)
  if (standing === 'ours') await disk.rename(target, old)
  try {
    await disk.rename(temp, target)
  } catch (error) {
    if (standing === 'ours') await disk.rename(old, target)
    if (standing === 'empty') await disk.mkdir(target).catch(() => {})
    throw error
  }
  await disk.rm(old, { recursive: true, force: true }).catch(() => {})
}
