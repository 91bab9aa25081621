/** One thing wrong with a plan: where it stands in the document, and what is wrong in plain words. */
export interface Fault {
  /** JSONPath of the value, for example `$.lines[0].stanchions[2].station`. */
  path: string
  message: string
  /** Line of the file, from 1, where it is known. */
  line?: number
}

/** Steps from the top of the document to a value. */
export type Path = readonly PropertyKey[]

/** The path as JSONPath text (RFC 9535): `$` is the whole document. */
export function pathText(path: Path): string {
  let text = '$'
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`
    else if (/^[A-Za-z_][A-Za-z0-9_]*$/.test(String(step))) text += `.${String(step)}`
    else text += `[${JSON.stringify(shortened(String(step), 60))}]`
  }
  return text
}

export const fault = (path: Path, message: string): Fault => ({ path: pathText(path), message })

/** Text cut to a length that fits a message. */
export function shortened(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most)}...`
}

/** A value as a message shows it: short, quoted where it is text. */
export function shown(value: unknown): string {
  if (typeof value === 'string') return `the text ${JSON.stringify(shortened(value, 40))}`
  if (value === null) return 'null (empty)'
  if (value === undefined) return 'missing'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object') return 'an object'
  return String(value)
}

/** The value that stands at a path, or undefined. Only own properties count. */
export function valueAt(root: unknown, path: Path): unknown {
  let here = root
  for (const step of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, step)) return undefined
    here = (here as Record<PropertyKey, unknown>)[step]
  }
  return here
}
