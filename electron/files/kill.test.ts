import { spawn } from 'node:child_process'
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { Host } from '../host'

/** `FALLROOM_KILLS=500 npx vitest run electron/files/kill` for the long run. */
const kills = Number(process.env.FALLROOM_KILLS ?? 30)
const seed = Number(process.env.FALLROOM_SEED ?? 20261125)

let folder: string
let child: string
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'fallroom-kill-'))
  child = join(folder, 'child.mjs')
  await build({
    configFile: false,
    logLevel: 'silent',
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: fileURLToPath(new URL('../testing/saving-child.ts', import.meta.url)),
      outDir: folder,
      emptyOutDir: false,
      rollupOptions: { output: { entryFileNames: 'child.mjs' } },
    },
  })
})
afterAll(() => rm(folder, { recursive: true, force: true }))

it(`loses nothing over ${kills} kills at random moments (seed ${seed})`, async () => {
  const random = seeded(seed)
  const plan = join(folder, 'plan.json')
  const home = join(folder, 'home')
  await writeFile(plan, planText(0))
  let least = { saved: 0, kept: 0 }
  for (let kill = 0; kill < kills; kill += 1) {
    const said = await killedAt([child, plan, home], Math.floor(random() * 8), random() * 15)
    least = { saved: Math.max(least.saved, said.saved), kept: Math.max(least.kept, said.kept) }
    await holds(plan, home, least, kill)
  }
  expect(least.kept).toBeGreaterThan(kills)
  expect(least.saved).toBeGreaterThan(kills / 4)
}, 600_000)

interface Kept {
  saved: number
  kept: number
}

/** Kills the child `delay` ms after it has said `words` things. Returns the last changes that it knew to be kept. */
function killedAt(args: string[], words: number, delay: number): Promise<Kept> {
  const running = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] })
  let heard = ''
  let doomed = false
  running.stdout.on('data', (data) => {
    heard += data
    if (doomed || heard.split('\n').length - 1 <= words) return
    doomed = true
    setTimeout(() => running.kill('SIGKILL'), delay)
  })
  return new Promise((resolve) => {
    running.on('close', () => resolve({ saved: last(heard, 'saved'), kept: last(heard, 'journal') }))
  })
}

function last(heard: string, what: string): number {
  const numbers = heard.split('\n').filter((line) => line.startsWith(`${what} `))
  return Number(numbers.at(-1)?.split(' ')[1] ?? 0)
}

/** The file and its backup are whole plans, and every change that was said to be kept is on disk. */
async function holds(plan: string, home: string, least: Kept, kill: number): Promise<void> {
  const where = `seed ${seed}, kill ${kill}`
  const inFile = await changeIn(plan)
  expect(inFile, `saved change is in the file; ${where}`).toBeGreaterThanOrEqual(least.saved)
  await changeIn(`${plan}.bak`).catch((error) => {
    if (error.code !== 'ENOENT') throw error
  })
  const host = new Host(home)
  const pending = await host.journalPending()
  await host.end()
  if (!pending.ok) throw new Error(pending.why)
  const changes = pending.value.map((entry) => JSON.parse(entry.text).notes as number)
  expect(Math.max(inFile, ...changes), `kept change is on disk; ${where}`).toBeGreaterThanOrEqual(least.kept)
  await noLitter(plan)
}

async function changeIn(path: string): Promise<number> {
  const document = JSON.parse(await readFile(path, 'utf8'))
  expect(document.format).toBe('fallroom-plan')
  return document.notes
}

/** Opening the plan again takes away what the killed program left half-written. */
async function noLitter(plan: string): Promise<void> {
  const host = new Host(join(folder, 'other-home'))
  await host.openPath(plan)
  await host.end()
  const names = await readdir(folder)
  expect(names.filter((name) => name.startsWith('.plan.json.'))).toEqual([])
}

function planText(notes: number): string {
  return JSON.stringify({ format: 'fallroom-plan', version: 1, notes })
}

/** mulberry32, public domain. */
function seeded(state: number): () => number {
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}
