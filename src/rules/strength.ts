/** Strength over demand, for every rule that asks for a safety factor. */
import { derived, type Explained, found, given } from '../solver/explain'
import type { Corner, Demand, Known, LineFacts, RuleContext } from './context'
import { isKnown } from './context'
import type { Finding } from './finding'
import { compare, told } from './judge'
import type { Rule } from './rule'
import { cornerSentence, cornerWords, limitSource, say, sources } from './words'

/** One part that can fail, and what it must carry. */
export interface Strength {
  /** "the shaft", "the strap leg". */
  name: string
  /** N */
  capacity: number
  demand: Demand
  source: string
  /** How the capacity comes about, where it is not a plain figure. */
  capacityTree?: Explained
}

/** Strength over demand; infinite where nothing is asked of the part. */
const ratio = (capacity: number, demand: number): number => (demand > 0 ? capacity / demand : Infinity)

interface Weakest {
  /** Unknown where any demand is; infinite where nothing is asked of any part. */
  value: Known
  /** The lowest ratio that is known: the true one is this at best. */
  atBest?: number
  of: Strength | null
}

/** The part with the lowest strength over demand. */
function weakest(parts: Strength[]): Weakest {
  let low = Infinity
  let of: Strength | null = null
  let missing: Exclude<Known, number> | null = null
  for (const part of parts) {
    const { value, atLeast } = part.demand
    if (!isKnown(value)) missing ??= typeof value === 'number' ? { unknown: 'a demand is not finite' } : value
    const demand = isKnown(value) ? value : atLeast
    const r = demand === undefined ? Infinity : ratio(part.capacity, demand)
    if (of === null || r < low) {
      low = r
      of = part
    }
  }
  if (missing === null) return { value: low, of }
  return { value: missing, of, ...(low < Infinity ? { atBest: low } : {}) }
}

/** A demand that is known in part counts for the text too. */
const demandOf = (part: Strength): number =>
  isKnown(part.demand.value) ? part.demand.value : (part.demand.atLeast ?? Number.NaN)

export interface StrengthSubject {
  subject: string
  where: string
  line: LineFacts
  parts: Strength[]
  otherwise?: 'warn'
  remark?: string
}

/** The finding of the weakest part against the basis's safety factor. */
export function strengthFinding(rule: Rule, ctx: RuleContext, s: StrengthSubject): Finding {
  const { plan } = ctx
  const { value, atBest, of } = weakest(s.parts)
  const source = sources(rule.source, limitSource(plan, 'safetyFactor'), of?.source)
  const head = { subject: s.subject, line: s.line.line.id, unit: 'ratio', source }
  const limit = plan.basis.safetyFactor
  if (of === null || value === Infinity) {
    const text = `${s.where}: nothing pulls here in any fall computed, so there is no ratio to tell.`
    return told(rule, { ...head, status: 'pass', value: null, limit, text })
  }
  const named = { ...head, where: s.where, limit, want: 'at least', system: plan.units } as const
  return compare(rule, {
    ...named,
    value,
    ...(atBest === undefined ? {} : { atBest }),
    tells: (r) =>
      `${of.name} holds ${say(of.capacity, 'N', plan.units)} against ${say(demandOf(of), 'N', plan.units)}, ${r} to 1`,
    limitSource: limitSource(plan, 'safetyFactor'),
    remark: [beyond(of, plan.units), cornerSentence(of.demand.corner, s.line), s.remark ?? '']
      .join(' ')
      .trim(),
    ...(s.otherwise === undefined ? {} : { otherwise: s.otherwise }),
  })
}

/** From where on the numbers mean nothing. */
function beyond(part: Strength, system: 'us' | 'si'): string {
  if (!(demandOf(part) > part.capacity)) return ''
  return `The demand is beyond the strength: past ${say(part.capacity, 'N', system)} the numbers mean nothing.`
}

/** A demand as a node: its own tree where the study has one, else the figure and the fall it is from. */
export function demandNode(label: string, unit: string, demand: Demand, line: LineFacts): Explained {
  const own = demand.explain?.()
  if (own) return own
  return found(label, isKnown(demand.value) ? demand.value : null, unit, cornerText(demand.corner, line))
}

const cornerText = (corner: Corner | undefined, line: LineFacts): string =>
  corner ? cornerWords(corner, line) : 'worst of all falls computed'

/** Every part's ratio, the lowest on top. */
export function explainStrength(title: string, parts: Strength[], line: LineFacts): Explained {
  const loaded = parts.filter((p) => demandOf(p) > 0 || parts.length === 1)
  const ratios = loaded.map((p) =>
    derived(
      'ratio',
      `${p.name[0]?.toUpperCase()}${p.name.slice(1)}`,
      [
        p.capacityTree ?? given('Strength', p.capacity, 'N', p.source),
        demandNode('Demand', 'N', p.demand, line),
      ],
      { unit: 'ratio' },
    ),
  )
  const only = ratios[0]
  return ratios.length === 1 && only ? only : derived('least', title, ratios, { unit: 'ratio' })
}
