import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseSync } from 'vite'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** Which folders a layer may import from, besides itself. The arrows of the folder map in README. */
const arrows: Record<string, string[]> = {
  'src/plan': [],
  'src/geometry': ['src/plan'],
  'src/solver': ['src/plan', 'src/geometry'],
  'src/rules': ['src/plan', 'src/geometry', 'src/solver', 'src/study'],
  'src/study': ['src/plan', 'src/geometry', 'src/solver', 'src/rules'],
  'src/desk': ['src/plan'],
  'src/theme': [],
  'src/models': ['src/plan', 'src/geometry', 'src/desk'],
}
const core = ['src/plan', 'src/geometry', 'src/solver', 'src/rules', 'src/study']
arrows['src/state'] = [...core, 'src/desk', 'src/theme', 'src/models', 'samples']
arrows['src/drawings'] = [...core, 'src/theme']
arrows['src/scene'] = [...core, 'src/state', 'src/theme', 'src/models']
arrows['src/panels'] = [
  ...core,
  'src/state',
  'src/theme',
  'src/models',
  'src/drawings',
  'src/handover',
  'src/scene',
  'src/desk',
]
arrows['src/handover'] = [...core, 'src/state', 'src/theme', 'src/drawings', 'src/desk']
arrows['src/cli'] = [...core, 'src/models', 'src/drawings', 'src/handover', 'electron/files']
arrows.electron = ['src/desk']
/** The window's own entry, on top of everything. */
arrows['src/app.tsx'] = Object.keys(arrows)
arrows['src/main.tsx'] = [...Object.keys(arrows), 'src/app']

/** Results and details are the contract between rules and study; rules see only these types. */
const contracts = ['src/study/results', 'src/study/details']

interface Source {
  file: string
  layer: string
  imports: string[]
  /** Names used and texts written, comments left out. */
  names: Set<string>
  texts: string[]
}

const sources = ['src', 'electron'].flatMap((folder) => filesIn(folder)).map(read)

function filesIn(folder: string): string[] {
  const entries = readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
  const files = entries.filter((entry) => entry.isFile() && /\.(ts|tsx)$/.test(entry.name))
  return files
    .map((entry) =>
      relative(root, join(entry.parentPath ?? entry.path, entry.name))
        .split('\\')
        .join('/'),
    )
    .filter((file) => !/\.test\.tsx?$|\.d\.ts$|\/testing\//.test(file))
}

function read(file: string): Source {
  const found: Source = { file, layer: layerOf(file), imports: [], names: new Set(), texts: [] }
  walk(parseSync(file, readFileSync(join(root, file), 'utf8')).program, found)
  return found
}

function layerOf(file: string): string {
  const parts = file.split('/')
  return parts[0] === 'src' ? parts.slice(0, 2).join('/') : (parts[0] ?? '')
}

type Node = Record<string, unknown> & { type?: string }

function walk(node: unknown, found: Source): void {
  if (Array.isArray(node)) for (const one of node) walk(one, found)
  if (typeof node !== 'object' || node === null || Array.isArray(node)) return
  const { type, source, name, value } = node as Node & { source?: { value?: unknown } }
  if (type && /^(Import|Export).*(Declaration|Expression)$/.test(type) && typeof source?.value === 'string') {
    found.imports.push(source.value)
  }
  // `new Date(text)` only reads what it is given; `new Date()` asks the clock.
  if (type === 'NewExpression' && isClock(node as Node)) found.names.add('Date.now')
  if (type === 'MemberExpression') found.names.add(dotted(node as Node))
  if (type === 'Identifier' && typeof name === 'string') found.names.add(name)
  if (type === 'Literal' && typeof value === 'string') found.texts.push(value)
  if (type === 'TemplateElement') found.texts.push(String((value as { raw?: string }).raw))
  for (const below of Object.values(node)) walk(below, found)
}

function isClock(node: Node): boolean {
  const callee = node.callee as Node | undefined
  return callee?.name === 'Date' && (node.arguments as unknown[]).length === 0
}

function dotted(node: Node): string {
  const name = (part: unknown) => String((part as Node | undefined)?.name ?? '')
  return `${name(node.object)}.${name(node.property)}`
}

/** The file that a relative import leads to, from the project's folder and without its ending; null for a package. */
function target(from: string, specifier: string): string | null {
  if (!specifier.startsWith('.')) return null
  const path = relative(root, resolve(root, dirname(from), specifier.replace(/\?.*$/, '')))
  return path.split('\\').join('/')
}

const where = ({ file }: Source, what: string) => `${file}: ${what}`

it('finds the sources', () => {
  expect(sources.length).toBeGreaterThan(50)
  expect(sources.flatMap((source) => source.imports).length).toBeGreaterThan(100)
})

it('knows every layer', () => {
  expect([...new Set(sources.map((source) => source.layer))].filter((layer) => !arrows[layer])).toEqual([])
})

it('imports only along the arrows', () => {
  const wrong = sources.flatMap((source) =>
    source.imports.flatMap((specifier) => {
      const to = target(source.file, specifier)
      if (to === null) return []
      return mayImport(source.layer, to) ? [] : [where(source, `may not import ${to}`)]
    }),
  )
  expect(wrong).toEqual([])
})

function mayImport(layer: string, to: string): boolean {
  const toLayer = layerOf(to)
  if (layer === toLayer || to.endsWith('.css')) return true
  if (layer === 'src/rules' && toLayer === 'src/study') return contracts.includes(to)
  if (layer === 'src/solver' && toLayer === 'src/study') return contracts.includes(to)
  return (arrows[layer] ?? []).some((allowed) => to === allowed || to.startsWith(`${allowed}/`))
}

it('keeps three to the scene, the model readers and one file of the geometry', () => {
  const three = /^(three($|\/)|three-mesh-bvh|@react-three\/)/
  const users = sources.filter((source) => source.imports.some((specifier) => three.test(specifier)))
  const outside = users.filter(({ layer }) => layer !== 'src/scene' && layer !== 'src/models')
  expect(outside.filter(({ layer }) => layer !== 'src/geometry').map(({ file }) => file)).toEqual([])
  expect(outside.length).toBeLessThanOrEqual(1)
})

it('keeps Electron to its own folder and Node out of the window', () => {
  const electron = sources.filter((source) => source.imports.includes('electron'))
  expect(electron.filter(({ layer }) => layer !== 'electron').map(({ file }) => file)).toEqual([])
  const node = sources.filter((source) => source.imports.some((specifier) => specifier.startsWith('node:')))
  expect(
    node.filter(({ layer }) => layer !== 'electron' && layer !== 'src/cli').map(({ file }) => file),
  ).toEqual([])
})

describe('the core is pure', () => {
  const pure = sources.filter(({ layer }) => core.includes(layer))
  const packages = /^(react|react-dom|zustand|zundo|@mantine|lucide|comlink|electron|node:|pdfmake|web-ifc)/

  it('uses no window, no desktop and no state', () => {
    const wrong = pure.flatMap((source) =>
      source.imports
        .filter((specifier) => packages.test(specifier))
        .map((specifier) => where(source, specifier)),
    )
    expect(wrong).toEqual([])
  })

  it('knows no document, no clock and no chance', () => {
    const members = [
      'Date.now',
      'Math.random',
      'crypto.randomUUID',
      'crypto.getRandomValues',
      'document.body',
    ]
    const owners = ['window', 'navigator', 'process', 'performance', 'globalThis']
    const globals = [
      'fetch',
      'XMLHttpRequest',
      'localStorage',
      'sessionStorage',
      'setTimeout',
      'querySelector',
    ]
    const wrong = pure.flatMap((source) =>
      [...source.names]
        .filter(
          (name) =>
            globals.includes(name) || members.includes(name) || owners.includes(name.split('.')[0] ?? ''),
        )
        .map((name) => where(source, name)),
    )
    expect(wrong).toEqual([])
  })
})

it('names no address on any network', () => {
  const allowed = /^https?:\/\/(127\.0\.0\.1|www\.w3\.org\/)/
  const wrong = sources.flatMap((source) =>
    source.texts
      .filter((text) => /\b(https?|wss?):\/\//.test(text) && !allowed.test(text))
      .map((text) => where(source, text)),
  )
  expect(wrong).toEqual([])
})
