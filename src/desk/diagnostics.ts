import type { Plan } from '../plan/types'
import type { DeskFacts } from './bridge'

export interface DiagnosticInput {
  facts: DeskFacts
  /** ISO 8601 */
  at: string
  plan: Plan
  /** The results document, or null where none was computed. */
  results: unknown
  /** What went wrong, the latest last, as the window caught it. */
  errors: string[]
}

/**
 * A document that the person may save and give to whoever looks after the program; nothing sends it. With `names` false
 * every text that a person wrote is taken out, ids are numbered, and errors lose whatever of those texts they quote; the
 * figures stay, since they are what a fault hangs on.
 */
export function diagnosticText(input: DiagnosticInput, names: boolean): string {
  const { plan, results, errors, ...about } = input
  const kept = names ? { plan, results, errors } : withoutNames({ plan, results, errors })
  return `${JSON.stringify({ format: 'fallroom-diagnostic', version: 1, names, ...about, ...kept }, null, 2)}\n`
}

/** Fields whose text is one of a few fixed words, and so no one's name. */
const words = new Set(
  'format version units kind role type material absorberAt grip rule status unit method line connector status upAxis result'.split(
    ' ',
  ),
)
const fixedWord = /^[a-z][a-z0-9 -]{0,30}$/

interface Told {
  plan: Plan
  results: unknown
  errors: string[]
}

function withoutNames({ plan, results, errors }: Told) {
  const ids = new Map<string, string>()
  collectIds(plan, ids)
  const texts = new Set<string>()
  const strip = (value: unknown) => stripped(value, '', ids, texts)
  const told = { plan: strip(plan), results: strip(results) }
  return { ...told, errors: errors.map((error) => scrub(error, [...texts, ...ids.keys()])) }
}

function collectIds(value: unknown, ids: Map<string, string>): void {
  if (typeof value !== 'object' || value === null) return
  const { id } = value as { id?: unknown }
  if (typeof id === 'string' && !ids.has(id)) ids.set(id, `id-${ids.size + 1}`)
  for (const below of Object.values(value)) collectIds(below, ids)
}

function stripped(value: unknown, key: string, ids: Map<string, string>, texts: Set<string>): unknown {
  if (typeof value === 'string') return strippedText(value, key, ids, texts)
  if (Array.isArray(value)) return value.map((one) => stripped(one, key, ids, texts))
  if (typeof value !== 'object' || value === null) return value
  // Stations of as-built records are keyed by the stanchions' ids.
  const entries = Object.entries(value).map(([name, below]) => {
    return [ids.get(name) ?? name, stripped(below, name, ids, texts)] as const
  })
  return Object.fromEntries(entries)
}

function strippedText(text: string, key: string, ids: Map<string, string>, texts: Set<string>): string {
  const id = ids.get(text)
  if (id) return id
  if (words.has(key) && fixedWord.test(text)) return text
  if (text === '') return text
  texts.add(text)
  return `(${text.length} characters)`
}

/** Takes the plan's texts and the paths of this machine out of an error, the longest first. */
function scrub(error: string, texts: string[]): string {
  const long = texts.filter((text) => text.length > 2).sort((a, b) => b.length - a.length)
  const withoutTexts = long.reduce((left, text) => left.split(text).join('(text)'), error)
  return withoutTexts.replace(
    /(?:[a-z]+:\/\/|[A-Z]:\\|\/(?:home|Users|root|tmp|var)\/)[^\s)'"]*/g,
    (path) => {
      return path.split(/[/\\]/).at(-1) ?? ''
    },
  )
}
