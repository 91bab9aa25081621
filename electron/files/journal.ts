import { randomUUID } from 'node:crypto'
import { mkdir, readdir, readFile, stat, unlink, utimes, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import { refused, type Said, said } from '../../src/desk/bridge'
import { fileFault } from './fault'
import { fingerprint } from './read-file'
import { isRunning, sweepTemps, writeAtomic } from './write-atomic'

const record = z.object({
  format: z.literal('fallroom-journal'),
  version: z.literal(1),
  session: z.string(),
  pid: z.number(),
  name: z.string(),
  /** Null if the plan was never saved. */
  path: z.string().nullable(),
  /** Fingerprint of the file when its plan was opened or last saved. */
  base: z.string().nullable(),
  at: z.string(),
  text: z.string(),
  sum: z.string(),
})
export type JournalRecord = z.infer<typeof record>

export interface JournalDocument {
  name: string
  path: string | null
  base: string | null
}

/** A running program touches its mark this often; a mark older than `STALE` belongs to a program that ended. */
export const BEAT = 10_000
const STALE = 35_000

/**
 * Unsaved changes on disk, one file a document and session, each written atomically with a checksum. A kill loses at
 * most what was not handed over yet. Entries of other sessions are only offered once those have ended.
 */
export class JournalStore {
  readonly session = randomUUID()
  private folder: string
  private queue: Promise<unknown> = Promise.resolve()

  constructor(home: string) {
    this.folder = join(home, 'journal')
  }

  write(doc: JournalDocument, text: string, at: Date): Promise<Said<null>> {
    return this.inTurn(() => this.writeNow(doc, text, at))
  }

  private async writeNow(doc: JournalDocument, text: string, at: Date): Promise<Said<null>> {
    const kept: JournalRecord = {
      format: 'fallroom-journal',
      version: 1,
      session: this.session,
      pid: process.pid,
      ...doc,
      at: at.toISOString(),
      text,
      sum: fingerprint(text),
    }
    try {
      await mkdir(this.folder, { recursive: true, mode: 0o700 })
      await writeAtomic(join(this.folder, this.entryOf(doc.path)), JSON.stringify(kept))
      return said(null)
    } catch (error) {
      const fault = fileFault(error, 'The journal of unsaved changes')
      return refused(fault.code, `Unsaved changes could not be kept aside: ${fault.why}`)
    }
  }

  /** Forgets this session's entry of a document. Waits for a write under way, so that it cannot come back. */
  clear(path: string | null): Promise<Said<null>> {
    return this.drop(this.entryOf(path))
  }

  drop(entry: string): Promise<Said<null>> {
    return this.inTurn(async () => {
      if (isEntryName(entry)) await unlink(join(this.folder, entry)).catch(() => {})
      return said(null)
    })
  }

  /** Forgets all of this session's entries. */
  forget(): Promise<Said<null>> {
    return this.inTurn(async () => {
      const names = await readdir(this.folder).catch(() => [] as string[])
      const own = names.filter((name) => isEntryName(name) && name.endsWith(`-${this.session}.json`))
      await Promise.all(own.map((name) => unlink(join(this.folder, name)).catch(() => {})))
      return said(null)
    })
  }

  /** Whole entries whose program has ended, and this session's own (its window may have been loaded anew). */
  async left(): Promise<{ entry: string; record: JournalRecord }[]> {
    const names = await readdir(this.folder).catch(() => [] as string[])
    const found = await Promise.all(names.filter(isEntryName).map((entry) => this.readEntry(entry)))
    await Promise.all(names.filter(isEntryName).map((entry) => sweepTemps(join(this.folder, entry))))
    return found.filter((one) => one !== null).sort((a, b) => b.record.at.localeCompare(a.record.at))
  }

  /** Says that this session lives. Call it every `BEAT`. */
  async beat(now: Date): Promise<void> {
    const mark = this.mark(this.session)
    try {
      await utimes(mark, now, now)
    } catch {
      await mkdir(this.folder, { recursive: true, mode: 0o700 }).catch(() => {})
      await writeFile(mark, '').catch(() => {})
    }
  }

  async end(): Promise<void> {
    await unlink(this.mark(this.session)).catch(() => {})
  }

  private async readEntry(entry: string): Promise<{ entry: string; record: JournalRecord } | null> {
    try {
      const parsed = record.safeParse(JSON.parse(await readFile(join(this.folder, entry), 'utf8')))
      if (!parsed.success || fingerprint(parsed.data.text) !== parsed.data.sum) return null
      return (await this.livesElsewhere(parsed.data)) ? null : { entry, record: parsed.data }
    } catch {
      return null
    }
  }

  /** The process number alone would not do: after a restart of the machine it may belong to something else. */
  private async livesElsewhere(one: JournalRecord): Promise<boolean> {
    if (one.session === this.session || !isRunning(one.pid)) return false
    const mark = await stat(this.mark(one.session)).catch(() => null)
    return mark !== null && Date.now() - mark.mtimeMs < STALE
  }

  private inTurn<T>(job: () => Promise<T>): Promise<T> {
    const next = this.queue.then(job)
    this.queue = next.catch(() => {})
    return next
  }

  private entryOf(path: string | null): string {
    return `${path === null ? 'unsaved' : fingerprint(path).slice(0, 24)}-${this.session}.json`
  }

  private mark(session: string): string {
    return join(this.folder, `${session}.alive`)
  }
}

function isEntryName(name: string): boolean {
  return /^[a-z0-9]+-[0-9a-f-]{36}\.json$/.test(name)
}
