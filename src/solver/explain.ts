/**
 * The explanation of a number: a tree of labelled values, each with unit, formula, source and the parts it came from.
 * Trees are plain data, so that screen, paper and tests read the same thing, and every closed form in them can be
 * worked out again from its parts.
 */
import { type EquationId, equations } from './explain-equations'

export interface Explained {
  label: string
  symbol?: string
  /** SI; null where it could not be computed. */
  value: number | null
  unit: string
  /** As printed. */
  formula?: string
  /** The closed form that gives `value` from `parts` in order; absent for figures given or solved numerically. */
  equation?: EquationId
  source: string
  parts: Explained[]
  /** Why the value is null, or what else a reader must know. */
  note?: string
}

/** A figure from the plan, with where it is from. */
export function given(
  label: string,
  value: number | null,
  unit: string,
  source: string,
  symbol?: string,
): Explained {
  return { label, value, unit, source, parts: [], ...(symbol === undefined ? {} : { symbol }) }
}

/** A figure that the solver found numerically: no closed form, so `method` says how it was found and from what. */
export function found(
  label: string,
  value: number | null,
  unit: string,
  method: string,
  parts: Explained[] = [],
): Explained {
  return { label, value, unit, source: method, parts }
}

/**
 * A figure by a closed form of its parts. `value` may carry the solver's own result; it is then held against the form
 * by `disagreements`. Null where a part is null or the form gives no number.
 */
export function derived(
  equation: EquationId,
  label: string,
  parts: Explained[],
  more: { symbol?: string; unit?: string; value?: number | null; source?: string } = {},
): Explained {
  const form = equations[equation]
  return {
    label,
    value: more.value !== undefined ? more.value : evaluateParts(equation, parts),
    unit: more.unit ?? (form.unit || (parts[0]?.unit ?? '')),
    formula: form.formula,
    equation,
    source: more.source ?? form.source,
    parts,
    ...(more.symbol === undefined ? {} : { symbol: more.symbol }),
  }
}

function evaluateParts(equation: EquationId, parts: Explained[]): number | null {
  const values: number[] = []
  for (const part of parts) {
    if (part.value === null) return null
    values.push(part.value)
  }
  const value = equations[equation].evaluate(values)
  return Number.isFinite(value) ? value : null
}

export interface Disagreement {
  /** Labels from the root down. */
  path: string[]
  value: number | null
  recomputed: number | null
}

/**
 * Every node whose value differs from its closed form worked out again from its parts, relative to the greatest part
 * (so that small differences of large figures are judged fairly). Empty: the explanation holds.
 */
export function disagreements(node: Explained, tolerance = 1e-6, above: string[] = []): Disagreement[] {
  const path = [...above, node.label]
  const below = node.parts.flatMap((part) => disagreements(part, tolerance, path))
  if (!node.equation) return below
  const recomputed = evaluateParts(node.equation, node.parts)
  if (agree(node.value, recomputed, node.parts, tolerance)) return below
  return [{ path, value: node.value, recomputed }, ...below]
}

function agree(value: number | null, again: number | null, parts: Explained[], tolerance: number): boolean {
  if (value === null || again === null) return value === again
  const alike = parts.every((p) => p.unit === parts[0]?.unit)
  const addends = alike ? Math.max(0, ...parts.map((p) => Math.abs(p.value ?? 0))) : 0
  return Math.abs(value - again) <= tolerance * Math.max(Math.abs(value), Math.abs(again), addends)
}

/** All nodes of a tree, root first, with their depth: the order in which paper and screen list them. */
export function flatten(node: Explained, depth = 0): { node: Explained; depth: number }[] {
  return [{ node, depth }, ...node.parts.flatMap((part) => flatten(part, depth + 1))]
}
