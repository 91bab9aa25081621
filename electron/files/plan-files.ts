import { randomUUID } from 'node:crypto'
import { basename, resolve } from 'node:path'
import {
  type FileRef,
  type FileState,
  MAX_PLAN_BYTES,
  type OpenedFile,
  refused,
  type Said,
  said,
} from '../../src/desk/bridge'
import { whyNotOver } from '../../src/desk/peek'
import { fileFault } from './fault'
import { fingerprint, readText, whyReadOnly } from './read-file'
import { type Disk, sweepTemps, writeAtomic } from './write-atomic'

export interface KnownFile {
  path: string
  /** Fingerprint of what the file held when it was opened or last saved here; null: it was not there. */
  base: string | null
}

/** The files that the person opened or saved in this session. Nothing else on the disk can be named. */
export class PlanFiles {
  private known = new Map<string, KnownFile>()
  private queue: Promise<unknown> = Promise.resolve()

  constructor(private disk?: Disk) {}

  get(id: string | null): KnownFile | null {
    return (id !== null && this.known.get(id)) || null
  }

  async open(path: string): Promise<Said<OpenedFile>> {
    const full = resolve(path)
    const text = await readText(full, MAX_PLAN_BYTES)
    if (!text.ok) return text
    await sweepTemps(full)
    const ref = await this.register(full, fingerprint(text.value))
    return said({ ...ref, readOnly: whyNotOver(text.value) ?? ref.readOnly, text: text.value })
  }

  async register(path: string, base: string | null): Promise<FileRef> {
    const id = randomUUID()
    this.known.set(id, { path, base })
    return { id, name: basename(path), place: path, readOnly: await whyReadOnly(path) }
  }

  /** Saves to where the file lies. Saves never overlap: the last one asked for is the one that stays. */
  save(id: string | null, text: string, overwrite: boolean): Promise<Said<FileRef>> {
    return this.inTurn(() => this.saveNow(id, text, overwrite))
  }

  private async saveNow(id: string | null, text: string, overwrite: boolean): Promise<Said<FileRef>> {
    const file = this.get(id)
    if (id === null || !file) return refused('no-place', 'This plan has no place yet: save it as a file.')
    const barrier = await this.whyNotSave(file, overwrite)
    if (barrier) return barrier
    const written = await this.write(file.path, text)
    if (!written.ok) return written
    file.base = fingerprint(text)
    return said({ id, name: basename(file.path), place: file.path, readOnly: null })
  }

  /** Saves to a place that the person chose in a dialog, which has asked about a file that is there. */
  saveTo(path: string, text: string): Promise<Said<FileRef>> {
    return this.inTurn(async () => {
      const full = resolve(path)
      const barrier = await this.whyNotSave({ path: full, base: null }, true)
      if (barrier) return barrier
      const written = await this.write(full, text)
      return written.ok ? said(await this.register(full, fingerprint(text))) : written
    })
  }

  async state(id: string): Promise<Said<FileState>> {
    const file = this.get(id)
    if (!file) return said({ exists: false, changed: false, readOnly: null })
    const now = await readText(file.path, MAX_PLAN_BYTES)
    if (!now.ok) return said({ exists: now.code !== 'missing', changed: true, readOnly: null })
    const readOnly = whyNotOver(now.value) ?? (await whyReadOnly(file.path))
    return said({ exists: true, changed: fingerprint(now.value) !== file.base, readOnly })
  }

  private async whyNotSave(file: KnownFile, overwrite: boolean) {
    const now = await readText(file.path, MAX_PLAN_BYTES)
    if (!now.ok && now.code === 'missing') return null
    if (!now.ok && now.code === 'not-a-file') return now
    const newer = now.ok ? whyNotOver(now.value) : null
    if (newer) return refused('newer-version', newer)
    const locked = await whyReadOnly(file.path)
    if (locked) return refused('read-only', locked)
    const changed = !now.ok || fingerprint(now.value) !== file.base
    if (!changed || overwrite) return null
    const name = basename(file.path)
    return refused('changed-on-disk', `${name} was changed by someone else since it was opened here.`)
  }

  private async write(path: string, text: string): Promise<Said<null>> {
    if (!isPlanText(text))
      return refused('bad-request', 'What was to be saved is no plan. Nothing was changed.')
    try {
      await writeAtomic(path, text, {
        backup: await this.worthKeeping(path),
        ...(this.disk && { disk: this.disk }),
      })
      return said(null)
    } catch (error) {
      return fileFault(error, basename(path))
    }
  }

  /** The `.bak` holds the last good copy: a file that is no plan any more does not push a good one out. */
  private async worthKeeping(path: string): Promise<boolean> {
    const now = await readText(path, MAX_PLAN_BYTES)
    return now.ok && isPlanText(now.value)
  }

  private inTurn<T>(job: () => Promise<T>): Promise<T> {
    const next = this.queue.then(job)
    this.queue = next.catch(() => {})
    return next
  }
}

function isPlanText(text: string): boolean {
  try {
    return JSON.parse(text)?.format === 'fallroom-plan'
  } catch {
    return false
  }
}
