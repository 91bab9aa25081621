/** What the schema found, said so that a foreman can put it right. */
import type { z } from 'zod'
import { type Fault, fault, type Path, shown, valueAt } from './fault'

type Issue = z.core.$ZodIssue

const KINDS: Record<string, string> = {
  number: 'a number',
  string: 'text',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'an object with named fields',
  record: 'an object with named fields',
  int: 'a whole number',
}

/** The faults of a schema's refusal; `base` is where the checked value stands in the document `root`. */
export function schemaFaults(error: z.core.$ZodError, root: unknown, base: Path = []): Fault[] {
  return error.issues.map((issue) => {
    const path = [...base, ...issue.path]
    return fault(path, words(issue, valueAt(root, path)))
  })
}

function words(issue: Issue, value: unknown): string {
  switch (issue.code) {
    case 'invalid_type':
      return wrongType(KINDS[issue.expected] ?? issue.expected, value)
    case 'too_small':
      return tooSmall(issue, value)
    case 'too_big':
      return tooBig(issue, value)
    case 'invalid_value':
      return notOneOf(issue.values, value)
    case 'invalid_union':
      return issue.discriminator ? notOneOf(unionOptions(issue), value) : issue.message
    default:
      return issue.message
  }
}

function wrongType(wanted: string, value: unknown): string {
  if (value === undefined) return `is missing: ${wanted} is wanted`
  if (wanted.endsWith('number') && typeof value === 'string') {
    return `must be ${wanted}, is ${shown(value)}: write figures without quotes, in SI units`
  }
  return `must be ${wanted}, is ${shown(value)}`
}

function tooSmall(issue: Issue & { code: 'too_small' }, value: unknown): string {
  const least = Number(issue.minimum)
  if (issue.origin === 'string') return 'must not be empty'
  if (issue.origin === 'array') return `needs ${least} entries at least, has ${lengthOf(value)}`
  if (least === 0) return `must not be negative, is ${shown(value)}`
  if (least > 0 && least <= 1e-5) return `must be more than 0, is ${shown(value)}`
  return `must be ${least} or more, is ${shown(value)}`
}

function tooBig(issue: Issue & { code: 'too_big' }, value: unknown): string {
  const most = Number(issue.maximum)
  if (issue.origin === 'string') return `must not be longer than ${most} characters, has ${lengthOf(value)}`
  if (issue.origin === 'array') return `must not have more than ${most} entries, has ${lengthOf(value)}`
  return `must be ${most.toLocaleString('en-US')} or less, is ${shown(value)}`
}

function notOneOf(options: readonly unknown[], value: unknown): string {
  const list = options.map((o) => (typeof o === 'string' ? `"${o}"` : String(o))).join(', ')
  const wanted = options.length === 1 ? list : `one of ${list}`
  return value === undefined ? `is missing: ${wanted} is wanted` : `must be ${wanted}, is ${shown(value)}`
}

function unionOptions(issue: Issue & { code: 'invalid_union' }): readonly unknown[] {
  return 'options' in issue && Array.isArray(issue.options) ? issue.options : []
}

function lengthOf(value: unknown): number {
  return Array.isArray(value) || typeof value === 'string' ? value.length : 0
}
