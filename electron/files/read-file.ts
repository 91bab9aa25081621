import { createHash } from 'node:crypto'
import { access, constants, open, stat } from 'node:fs/promises'
import { basename } from 'node:path'
import { refused, type Said, said } from '../../src/desk/bridge'
import { fileFault } from './fault'

/** Reads a regular file of at most `limit` bytes. Folders, devices and pipes are refused before anything is read. */
export async function readRegular(path: string, limit: number): Promise<Said<Buffer>> {
  const name = basename(path)
  try {
    const info = await stat(path)
    if (!info.isFile()) return refused('not-a-file', `${name} is a folder or a device, not a file.`)
    if (info.size > limit) return refused('too-large', tooLarge(name, info.size, limit))
    return await readUpTo(path, limit)
  } catch (error) {
    return fileFault(error, name)
  }
}

/** Reads a plan's text. */
export async function readText(path: string, limit: number): Promise<Said<string>> {
  const bytes = await readRegular(path, limit)
  if (!bytes.ok) return bytes
  try {
    return said(new TextDecoder('utf-8', { fatal: true }).decode(bytes.value))
  } catch {
    return refused('failed', `${basename(path)} is not a text file, so it is no plan.`)
  }
}

export function fingerprint(text: string): string {
  return createHash('sha256').update(text).digest('hex')
}

/**
 * Why a file cannot be saved to where it lies, or null. The write bits are asked too: a rename would go over a file that
 * is marked read-only, and the administrator is allowed everything.
 */
export async function whyReadOnly(path: string): Promise<string | null> {
  try {
    const info = await stat(path)
    const marked = (info.mode & 0o222) === 0
    if (marked) return `${basename(path)} is marked read-only. Save your changes under another name.`
    await access(path, constants.W_OK)
    return null
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code
    return code === 'ENOENT' ? null : fileFault(error, basename(path)).why
  }
}

/** The file may grow between the look and the read, so the read is bounded too. */
async function readUpTo(path: string, limit: number): Promise<Said<Buffer>> {
  const file = await open(path, 'r')
  try {
    const bytes = await file.readFile()
    if (bytes.length > limit) return refused('too-large', tooLarge(basename(path), bytes.length, limit))
    return said(bytes)
  } finally {
    await file.close()
  }
}

function tooLarge(name: string, size: number, limit: number): string {
  const mega = (bytes: number) => Math.ceil(bytes / 1024 / 1024)
  return `${name} is ${mega(size)} MB; at most ${mega(limit)} MB can be opened.`
}
