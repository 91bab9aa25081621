import { type Fault, fault, type Path, shortened } from './fault'

export const MOST_DEPTH = 40
const MOST_VALUES = 400_000
const MOST_ENTRIES = 20_000
const MOST_STRING = 20_000
/** Faults told at once; a file with more has one cause. */
export const MOST_FAULTS = 200

/** What no plan may hold whatever its fields mean. Walks with its own stack, so depth costs nothing. */
export function screen(root: unknown): Fault[] {
  const faults: Fault[] = []
  const todo: { value: unknown; path: Path }[] = [{ value: root, path: [] }]
  let values = 0
  while (todo.length && faults.length < MOST_FAULTS) {
    const { value, path } = todo.pop()!
    if (++values > MOST_VALUES) return [fault([], `the file holds more than ${MOST_VALUES} values`)]
    const problem = problemOf(value)
    if (problem) faults.push(fault(path, problem))
    else if (typeof value === 'object' && value !== null) {
      if (path.length > MOST_DEPTH) return [fault(path.slice(0, 8), 'is nested too deep')]
      for (const [key, child] of Object.entries(value)) {
        todo.push({ value: child, path: [...path, Array.isArray(value) ? Number(key) : key] })
      }
    }
  }
  return faults.reverse()
}

function problemOf(value: unknown): string | null {
  if (typeof value === 'string') return textProblem(value)
  if (typeof value === 'number' && !Number.isFinite(value)) return 'is no finite number'
  if (typeof value !== 'object' || value === null) return null
  const keys = Object.keys(value)
  if (keys.length > MOST_ENTRIES) return `has ${keys.length} entries; at most ${MOST_ENTRIES} are read`
  if (Array.isArray(value)) return null
  if (keys.includes('__proto__')) return 'has a field named __proto__, which no plan has: take it out'
  const odd = keys.find((k) => textProblem(k) !== null || k.length > 200)
  return odd === undefined
    ? null
    : `has a field whose name is no plain text: ${shortened(JSON.stringify(odd), 40)}`
}

/** Control characters could drive a terminal or break a table; line ends and tabs are text. */
function textProblem(text: string): string | null {
  if (text.length > MOST_STRING)
    return `is a text of ${text.length} characters; at most ${MOST_STRING} are read`
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i)
    const control = (c < 32 && c !== 9 && c !== 10 && c !== 13) || (c >= 127 && c < 160)
    if (control) return `holds a control character (code ${c}) at place ${i + 1}`
  }
  return null
}
