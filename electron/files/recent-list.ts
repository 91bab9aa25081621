import { mkdir, readFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { z } from 'zod'
import type { RecentFile } from '../../src/desk/bridge'
import { fingerprint } from './read-file'
import { writeAtomic } from './write-atomic'

const KEPT = 12

const entry = z.object({ path: z.string().max(4096), at: z.string().max(40) })
const list = z.array(entry)
type Entry = z.infer<typeof entry>

/** Plans that were opened or saved lately, the latest first. A damaged list is an empty list. */
export class RecentList {
  constructor(private home: string) {}

  async all(): Promise<RecentFile[]> {
    return (await this.read()).map(({ path, at }) => ({
      id: recentId(path),
      name: basename(path),
      place: path,
      at,
    }))
  }

  async pathOf(id: string): Promise<string | null> {
    return (await this.read()).find(({ path }) => recentId(path) === id)?.path ?? null
  }

  /** Failing to remember is no reason to fail what the person did. */
  async add(path: string, at: Date): Promise<void> {
    const others = (await this.read()).filter((one) => one.path !== path)
    await this.write([{ path, at: at.toISOString() }, ...others].slice(0, KEPT))
  }

  async remove(path: string): Promise<void> {
    await this.write((await this.read()).filter((one) => one.path !== path))
  }

  private async read(): Promise<Entry[]> {
    try {
      const parsed = list.safeParse(JSON.parse(await readFile(this.file(), 'utf8')))
      return parsed.success ? parsed.data : []
    } catch {
      return []
    }
  }

  private async write(entries: Entry[]): Promise<void> {
    try {
      await mkdir(this.home, { recursive: true, mode: 0o700 })
      await writeAtomic(this.file(), JSON.stringify(entries, null, 1))
    } catch {
      // The list is a convenience.
    }
  }

  private file(): string {
    return join(this.home, 'recent.json')
  }
}

function recentId(path: string): string {
  return fingerprint(path).slice(0, 24)
}
