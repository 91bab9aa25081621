/**
 * Text to a JSON value that is fit to be looked at: not too large, not too deep, no keys that could reach an object's
 * prototype, no control characters, and where it is no JSON, the place where it stops being so.
 */
import { printParseErrorCode, visit } from 'jsonc-parser'
import { type Fault, fault, type Path } from './fault'
import { MOST_DEPTH, MOST_FAULTS, screen } from './screen'

/** Characters of a plan file. A plan of twenty girders and twelve lines has about two hundred thousand. */
export const MOST_TEXT = 20_000_000

export type JsonRead = { ok: true; value: unknown } | { ok: false; faults: Fault[] }

const refused = (path: Path, message: string): JsonRead => ({ ok: false, faults: [fault(path, message)] })

/** Reads JSON text. Never throws. */
export function readJson(text: string, most = MOST_TEXT): JsonRead {
  if (text.length > most) {
    return refused([], `the file is too large: ${megabytes(text.length)}, at most ${megabytes(most)} is read`)
  }
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text
  if (body.trim() === '') return refused([], 'the file is empty')
  if (deeperThan(body, MOST_DEPTH)) {
    return refused([], `lists and objects stand in one another more than ${MOST_DEPTH} deep`)
  }
  const value = parsed(body)
  if (value === undefined) return { ok: false, faults: [syntaxFault(body)] }
  const faults = [...doubleKeys(body), ...screen(value)]
  return faults.length ? { ok: false, faults: faults.slice(0, MOST_FAULTS) } : { ok: true, value }
}

const megabytes = (n: number): string => `${(n / 1e6).toFixed(1)} MB`

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

/** Whether brackets are nested deeper than the limit; looks past strings. Runs before any recursive reader. */
function deeperThan(text: string, most: number): boolean {
  let depth = 0
  let inString = false
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i)
    if (inString) {
      if (c === 92) i++
      else if (c === 34) inString = false
    } else if (c === 34) inString = true
    else if (c === 91 || c === 123) {
      if (++depth > most) return true
    } else if (c === 93 || c === 125) depth--
  }
  return false
}

const SYNTAX: Record<string, string> = {
  InvalidSymbol: 'a word that is no JSON (NaN and Infinity are none; text stands in double quotes)',
  InvalidNumberFormat: 'a number that is not written as JSON writes it',
  PropertyNameExpected: 'a field name in double quotes is wanted here',
  ValueExpected: 'a value is wanted here',
  ColonExpected: 'a colon is wanted here',
  CommaExpected: 'a comma is wanted here',
  CloseBraceExpected: 'a closing brace } is missing: the file may be cut short',
  CloseBracketExpected: 'a closing bracket ] is missing: the file may be cut short',
  EndOfFileExpected: 'something follows after the end of the document',
  InvalidCommentToken: 'comments are no JSON',
  UnexpectedEndOfString: 'a text has no closing quote',
  InvalidUnicode: 'a \\u escape is not complete',
  InvalidEscapeCharacter: 'a backslash stands before a character that needs none',
  InvalidCharacter: 'a control character stands in a text',
}

/** The first place where text stops being JSON, with the field that was being read. */
function syntaxFault(text: string): Fault {
  let first: Fault | null = null
  let last: Path = []
  visit(
    text,
    {
      onObjectProperty: (name, _o, _l, _line, _char, path) => {
        last = [...path(), name]
      },
      onArrayBegin: (_o, _l, _line, _char, path) => {
        last = path()
      },
      onError: (code, _offset, _length, line, character) => {
        const why = SYNTAX[printParseErrorCode(code)] ?? 'this is no JSON'
        first ??= fault(last, `the file is no JSON: line ${line + 1}, column ${character + 1}: ${why}`)
      },
    },
    { disallowComments: true, allowTrailingComma: false },
  )
  return first ?? fault(last, 'the file is no JSON')
}

/** Keys that stand twice in one object: which one counts is not for a program to choose. */
function doubleKeys(text: string): Fault[] {
  const seen: Set<string>[] = []
  const faults: Fault[] = []
  visit(text, {
    onObjectBegin: () => {
      seen.push(new Set())
    },
    onObjectEnd: () => {
      seen.pop()
    },
    onObjectProperty: (name, _offset, _length, line, _char, path) => {
      const keys = seen.at(-1)
      if (keys?.has(name))
        faults.push(fault([...path(), name], `stands twice in one object, again in line ${line + 1}`))
      keys?.add(name)
    },
  })
  return faults
}
