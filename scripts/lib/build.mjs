import { createHash, randomUUID } from 'node:crypto'
import { existsSync } from 'node:fs'
import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises'
import { join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { stripVTControlCharacters } from 'node:util'

export const root = fileURLToPath(new URL('../..', import.meta.url))
export const builtWindow = join(root, 'dist', 'window')
export const builtDesktop = join(root, 'dist', 'desktop')

const sources = [
  'src',
  'electron',
  'public',
  'index.html',
  'vite.config.ts',
  'package.json',
  'package-lock.json',
]
const stampFile = join(root, 'dist', 'built-from')

/**
 * Builds the window and the desktops if their sources changed since. Returns whether anything was built.
 * @param {{ quiet?: boolean, onBuild?: () => void }} [options]
 */
export async function buildIfStale({ quiet = true, onBuild } = {}) {
  const stamp = await sourceStamp()
  if (existsSync(stampFile) && (await readFile(stampFile, 'utf8')) === stamp) return false
  onBuild?.()
  await build({ quiet })
  await writeFile(stampFile, stamp)
  return true
}

/** The first lines of a failed build, without colours: what is wrong and where. */
export function buildFault(error) {
  const lines = stripVTControlCharacters(error.message)
    .split('\n')
    .filter((line) => line.trim() !== '')
  return lines.slice(0, 3).join('\n  ')
}

/** Builds beside the old build and swaps at the end, so that a failed build leaves the old one usable. */
async function build({ quiet }) {
  const vite = await import('vite')
  const draft = join(root, 'dist', `draft-${randomUUID()}`)
  const logLevel = quiet ? 'error' : 'info'
  await mkdir(draft, { recursive: true })
  try {
    await vite.build({ root, logLevel, build: { outDir: join(draft, 'window') } })
    for (const entry of desktopEntries)
      await vite.build(desktopConfig(entry, join(draft, 'desktop'), logLevel))
    await swap(join(draft, 'window'), builtWindow)
    await swap(join(draft, 'desktop'), builtDesktop)
  } finally {
    await rm(draft, { recursive: true, force: true })
  }
}

const desktopEntries = [
  { input: 'electron/main/main.ts', file: 'main.js', format: 'es' },
  // A sandboxed preload has to be one CommonJS file.
  { input: 'electron/preload/preload.ts', file: 'preload.cjs', format: 'cjs' },
  { input: 'electron/loopback/index.ts', file: 'loopback.js', format: 'es' },
]

function desktopConfig({ input, file, format }, outDir, logLevel) {
  return {
    root,
    configFile: false,
    publicDir: false,
    logLevel,
    ssr: { noExternal: true, external: ['electron'] },
    build: {
      ssr: true,
      target: 'node20',
      outDir,
      emptyOutDir: false,
      reportCompressedSize: false,
      rollupOptions: {
        input: join(root, input),
        output: { format, entryFileNames: file, codeSplitting: false },
      },
    },
  }
}

async function swap(from, to) {
  const old = `${to}-${randomUUID()}`
  await rename(to, old).catch(() => {})
  await rename(from, to)
  await rm(old, { recursive: true, force: true })
}

/** A fingerprint of every source of the build; tests do not count. */
async function sourceStamp() {
  const hash = createHash('sha256')
  for (const source of sources) {
    for (const file of await filesIn(join(root, source))) {
      hash
        .update(relative(root, file))
        .update('\0')
        .update(await readFile(file))
        .update('\0')
    }
  }
  return hash.digest('hex')
}

async function filesIn(path) {
  if (!existsSync(path)) return []
  const entries = await readdir(path, { recursive: true, withFileTypes: true }).catch(() => null)
  if (!entries) return [path]
  const files = entries.filter((entry) => entry.isFile() && !/\.test\.tsx?$/.test(entry.name))
  return files.map((entry) => join(entry.parentPath ?? entry.path, entry.name)).sort()
}
