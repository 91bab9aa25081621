/**
 * The order of letters on a line where scripts that run from right to left stand in it: the Unicode bidirectional
 * algorithm (UAX #9), which bidi-js works out. The PDF sets every run from left to right, and turns the letters within a
 * run of such a script itself; so what is done here is to bring the runs into the order in which they lie on the line.
 * Which parts of a text are of such a script is told by `turned-parts.ts`.
 */
import bidiFactory, { type EmbeddingLevels } from 'bidi-js'
import { hasTurned, turnedParts } from './turned-parts'

export interface Stretch {
  text: string
  /** Set from right to left by the font; else from left to right. */
  turned: boolean
  /** It lies on one line with the stretch before it: their order holds only there. */
  joined: boolean
  /** A new line begins here. */
  newLine: boolean
}

const bidi = bidiFactory()

/**
 * Stretches in their order on the line. A part from right to left is broken into lines here, each of which `fits`
 * takes, because who breaks lines later no longer knows what was read first.
 */
export function stretches(
  text: string,
  fits: (part: string) => boolean,
  names: readonly string[] = [],
): Stretch[] {
  const made: Stretch[] = []
  let at = 0
  for (const [start, end] of turnedParts(text, names)) {
    if (start > at) made.push(plain(text.slice(at, start)))
    made.push(...turnedLines(text.slice(start, end), fits))
    at = end
  }
  if (at < text.length) made.push(plain(text.slice(at)))
  return made
}

const plain = (text: string): Stretch => ({ text, turned: false, joined: false, newLine: false })

function turnedLines(text: string, fits: (part: string) => boolean): Stretch[] {
  const found = bidi.getEmbeddingLevels(text, 'rtl')
  let from = 0
  return linesOf(text, fits).flatMap((line, i, lines) => {
    // What would hang over the line's end as a blank is left out where another follows.
    const kept = i < lines.length - 1 ? line.trimEnd() : line
    const made = onOneLine(text, found, from, from + kept.length)
    from += line.length
    return made.map((s, k) => ({ ...s, joined: k > 0, newLine: k === 0 && i > 0 }))
  })
}

/** Words in the order in which they are read, as many on a line as fit. */
function linesOf(text: string, fits: (part: string) => boolean): string[] {
  const lines: string[] = []
  for (const word of text.match(/\S+\s*|\s+/gu) ?? []) {
    const last = lines.at(-1)
    if (last !== undefined && fits(last + word)) lines[lines.length - 1] = last + word
    else lines.push(word)
  }
  return lines
}

/** Letters of a line in their order on it, those of one direction that stay together as one stretch. */
function onOneLine(text: string, found: EmbeddingLevels, start: number, end: number): Stretch[] {
  const order = bidi.getReorderedIndices(text, found, start, end - 1).slice(start, end)
  const groups: number[][] = []
  for (const at of order) {
    const group = groups.at(-1)
    const before = group?.at(-1)
    const turned = isTurned(found, at)
    const next =
      before !== undefined && isTurned(found, before) === turned && at === before + (turned ? -1 : 1)
    if (group && next) group.push(at)
    else groups.push([at])
  }
  return groups.map((group) => stretchOf(text, group, isTurned(found, group[0]!)))
}

const isTurned = ({ levels }: EmbeddingLevels, at: number): boolean => (levels[at]! & 1) === 1

/** Brackets open to the other side; where nothing makes the font turn the letters, they are turned here. */
function stretchOf(text: string, at: readonly number[], turned: boolean): Stretch {
  const read = turned ? [...at].reverse() : at
  const letters = [...read.map((i) => text[i]!).join('')]
  const faced = turned ? letters.map((c) => bidi.getMirroredCharacter(c) ?? c) : letters
  const byFont = turned && hasTurned(faced.join(''))
  const said = turned && !byFont ? faced.reverse() : faced
  return { text: said.join(''), turned: byFont, joined: false, newLine: false }
}
