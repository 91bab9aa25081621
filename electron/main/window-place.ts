import { readFileSync } from 'node:fs'
import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import type { Rectangle } from 'electron'
import { z } from 'zod'
import { writeAtomic } from '../files/write-atomic'

const place = z.object({
  x: z.number().int(),
  y: z.number().int(),
  width: z.number().int().min(400).max(20_000),
  height: z.number().int().min(300).max(20_000),
  maximized: z.boolean(),
})
export type WindowPlace = z.infer<typeof place>

const first = { width: 1440, height: 900 }

/** Where the window stood last time, if it can still be seen there; otherwise only a size. */
export function usablePlace(kept: WindowPlace | null, screens: Rectangle[]): Partial<WindowPlace> {
  if (!kept) return first
  const seen = screens.some((screen) => overlap(kept, screen) >= 0.25 * kept.width * kept.height)
  return seen ? kept : { ...first, maximized: kept.maximized }
}

function overlap(a: Rectangle, b: Rectangle): number {
  const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)
  const down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y)
  return across > 0 && down > 0 ? across * down : 0
}

export function readPlace(home: string): WindowPlace | null {
  try {
    const parsed = place.safeParse(JSON.parse(readFileSync(join(home, 'window.json'), 'utf8')))
    return parsed.success ? parsed.data : null
  } catch {
    return null
  }
}

/** Forgetting where the window stood is no reason to trouble anyone. */
export async function keepPlace(home: string, now: WindowPlace): Promise<void> {
  try {
    await mkdir(home, { recursive: true, mode: 0o700 })
    await writeAtomic(join(home, 'window.json'), JSON.stringify(now))
  } catch {
    // The next start uses the first size.
  }
}
