import { mkdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import { writeAtomic } from './write-atomic'

const MOST = 60
const kept = z.record(z.string().max(60), z.string().max(1_000_000))

/** Small preferences of the window, where a browser would forget them: its page has another address at every start. */
export class Settings {
  private queue: Promise<unknown> = Promise.resolve()

  constructor(private home: string) {}

  async all(): Promise<Record<string, string>> {
    try {
      const parsed = kept.safeParse(JSON.parse(await readFile(this.file(), 'utf8')))
      return parsed.success ? parsed.data : {}
    } catch {
      return {}
    }
  }

  /** A preference that cannot be kept is no reason to trouble anyone. */
  set(key: string, value: string): Promise<void> {
    const job = async () => {
      const now = new Map(Object.entries(await this.all()))
      now.set(key, value)
      if (now.size > MOST) return
      await mkdir(this.home, { recursive: true, mode: 0o700 })
      await writeAtomic(this.file(), JSON.stringify(Object.fromEntries(now)))
    }
    const done = this.queue.then(job).catch(() => {})
    this.queue = done
    return done
  }

  private file(): string {
    return join(this.home, 'settings.json')
  }
}
