/** Wording that rules share: numbers in the plan's units, limits with their source, corners by name. */
import { loopNumber } from '../geometry/loops'
import type { Basis, Plan } from '../plan/types'
import { formatQuantity, type UnitSystem } from '../plan/units'
import type { Corner, LineFacts } from './context'

/** A value as a person reads it; angles are spelt out in sentences. */
export function say(value: number, unit: string, system: UnitSystem): string {
  if (unit === 'deg') return `${plain(value, 1)} degrees`
  if (unit === 'count') return plain(value, 2)
  return formatQuantity(value, unit, system)
}

/** A limit beside its value: an angle's unit is not said twice. */
const sayLimit = (value: number, unit: string, system: UnitSystem): string =>
  unit === 'deg' || unit === 'ratio' ? plain(value, 2) : say(value, unit, system)

/**
 * Value and limit as texts. Where both round to the same text although they differ, both get more digits, so that no
 * sentence reads "1.83 m, at most 1.83 m wanted" beside a failure.
 */
export function sayBoth(value: number, limit: number, unit: string, system: UnitSystem): [string, string] {
  const texts: [string, string] = [say(value, unit, system), sayLimit(limit, unit, system)]
  const same = texts[0] === say(limit, unit, system) && Math.abs(value - limit) > 1e-9 * Math.abs(limit)
  return same ? [finer(value, unit, system), finer(limit, unit, system)] : texts
}

const FINER: Record<string, Record<UnitSystem, [number, number, string]>> = {
  m: { si: [0.001, 1, ' mm'], us: [0.0254, 2, ' in'] },
  N: { si: [1, 0, ' N'], us: [4.4482216, 1, ' lbf'] },
  kg: { si: [1, 2, ' kg'], us: [0.45359237, 2, ' lb'] },
}

function finer(value: number, unit: string, system: UnitSystem): string {
  const [size, decimals, name] = FINER[unit]?.[system] ?? [1, 4, unit === 'deg' ? ' degrees' : '']
  return `${plain(value / size, decimals)}${name}`
}

/** Made once for each number of decimals: making one costs far more than using it, and a drag says thousands. */
const formats = new Map<number, Intl.NumberFormat>()

function formatOf(decimals: number): Intl.NumberFormat {
  const kept = formats.get(decimals) ?? new Intl.NumberFormat('en-US', { maximumFractionDigits: decimals })
  formats.set(decimals, kept)
  return kept
}

const plain = (value: number, decimals: number): string => {
  const text = formatOf(decimals).format(value)
  return text === '-0' ? '0' : text
}

/** "1 loop", "3 loops". */
export const plural = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`

/** The loop of an index as people count it. */
export const loopName = (index: number): string => `loop ${loopNumber(index)}`

/** Where a limit comes from, as the basis says it. */
export const limitSource = (plan: Plan, field: keyof Basis): string =>
  plan.basis.sources[field] ?? 'source not given'

/** The head of a source, for brackets in a sentence: what follows a colon, comma or bracket stays in the source itself. */
export const brief = (source: string): string => source.split(/: |, |; | \(/)[0] ?? source

/** The source of a finding: the rule's, the limit's, the part's. */
export function sources(rule: string, limit?: string, figures?: string): string {
  const parts = [rule]
  if (limit !== undefined && limit !== rule) parts.push(`limit: ${limit}`)
  if (figures !== undefined) parts.push(`figures: ${figures}`)
  return parts.join('; ')
}

const METHODS = { energy: 'by energy', dynamic: 'in time' } as const

/** Which fall a figure is from, as a sentence; empty where it is not known. */
export function cornerSentence(corner: Corner | undefined, facts: LineFacts): string {
  return corner ? ` Worst: ${cornerWords(corner, facts)}.` : ''
}

/** Which fall a figure is from. */
export function cornerWords(corner: Corner, facts: LineFacts): string {
  const worker = facts.workers.find((w) => w.worker.id === corner.worker)?.worker.name ?? corner.worker
  const place =
    corner.beside !== undefined
      ? `beside stanchion ${corner.beside}`
      : corner.span !== null
        ? `in span ${spanName(facts, corner.span)}`
        : ''
  const fall = [worker === null ? 'fall' : `fall of ${worker}`, place].filter(Boolean).join(' ')
  // Beside a stanchion the line does not move: only the connector's end counts.
  if (corner.beside !== undefined) return `${fall}, ${METHODS[corner.method]}, ${corner.connector} connector`
  return `${fall}, ${METHODS[corner.method]}, ${corner.line} line, ${corner.connector} connector, rope ${corner.grip}`
}

/** "S1 to S2". */
export function spanName(facts: LineFacts, span: number): string {
  const ends = [facts.line.stanchions[span]?.id, facts.line.stanchions[span + 1]?.id]
  return ends.every((e) => e !== undefined) ? ends.join(' to ') : String(span + 1)
}
