/**
 * Letters that the papers' fonts have. Inter carries Latin, Greek and Cyrillic; DejaVu Sans stands in for Armenian,
 * Georgian, Hebrew, Arabic and many signs. What neither has is shown as an empty box with a note that says so: a name
 * is never dropped in silence. Runs come in the order in which they lie on the line.
 */
import { create, type Font } from 'fontkit'
import { textWidth } from '../../drawings/text-size'
import { type Stretch, stretches } from './direction'
import type { PaperFonts } from './engine'
import { hasTurned } from './turned-parts'

const MISSING = '\u25a1'

type Face = 'Inter' | 'Fallback'

export interface Run {
  text: string
  font: Face
  /** The font turns its letters, so it must not be broken. */
  noWrap?: true
  /** Of pictures: a blank stands before it. */
  after?: true
}

export interface Letters {
  /**
   * A text in runs of one font each, with a box for every letter that no font has. Runs that must keep their order on a
   * line are held on one, of `room` text sizes at most.
   */
  runs(text: string, room?: number): Run[]
  /** The same on one line, for labels of pictures; those without letters from the right take one font for all. */
  label(text: string): Run[]
  /** Whether a label has needed the stand-in font so far. */
  stoodIn(): boolean
  /** Letters that were replaced so far. */
  missing(): string[]
}

/** Where nobody says how wide a column is, in text sizes: the least of those that names stand in. */
const ROOM = 20

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is to be dropped
const control = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u2028\u2029]/g
/** Joins, direction marks and variation signs carry no shape of their own. */
const shapeless = /\p{Default_Ignorable_Code_Point}/gu
/** The same but for the two that say whether letters of a turned script are joined. */
const shapelessButJoins = /(?![\u200c\u200d])\p{Default_Ignorable_Code_Point}/gu
const loneHalf = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g

/** `names` are the plan's own texts: one from right to left stays whole wherever it stands. */
export function letters(fonts: PaperFonts, names: readonly string[] = []): Letters {
  const faces = facesOf(fonts)
  const known = names
    .map(tidy)
    .filter(hasTurned)
    .sort((a, b) => b.length - a.length)
  let stoodIn = false
  const runsIn = (text: string, fits: (part: string) => boolean): Run[] => {
    const whole = tidy(text)
    if (!hasTurned(whole)) return joined(faces.known(whole.replace(shapeless, '')))
    return stretches(whole, fits, known).flatMap((s) => stretchRuns(s, faces))
  }
  return {
    runs: (text, room = ROOM) => runsIn(text, (part) => textWidth(part, 1) <= room),
    label: (text) => {
      const runs = runsIn(text, () => true)
      const out = hasTurned(text) ? runs.flatMap(inWords) : inOneFont(runs)
      stoodIn ||= out.some((r) => r.font === 'Fallback')
      return out
    },
    stoodIn: () => stoodIn,
    missing: faces.missing,
  }
}

interface Faces {
  /** Every letter with the font that has it; one that none has becomes a box. */
  known(text: string, first?: Face): { c: string; font: Face }[]
  missing(): string[]
}

function facesOf(fonts: PaperFonts): Faces {
  const has = { Inter: open(fonts.regular), Fallback: open(fonts.fallback) }
  const lost = new Set<string>()
  const fontOf = (c: string, first: Face): Face | null => {
    const code = c.codePointAt(0) ?? 0
    const second = first === 'Inter' ? 'Fallback' : 'Inter'
    if (code < 0x20 || has[first].hasGlyphForCodePoint(code)) return first
    return has[second].hasGlyphForCodePoint(code) ? second : null
  }
  const known = (text: string, first: Face = 'Inter') =>
    [...text].map((c) => {
      const font = fontOf(c, first)
      if (font) return { c, font }
      lost.add(c)
      return { c: MISSING, font: fontOf(MISSING, first) ?? 'Fallback' }
    })
  return { known, missing: () => [...lost] }
}

/** Runs of one stretch; its blanks bind it to its neighbours where the order of both holds on one line only. */
function stretchRuns(s: Stretch, faces: Faces): Run[] {
  const text = s.text.replace(s.turned ? shapelessButJoins : shapeless, '')
  const bound = s.turned || s.joined ? text.replace(/ /g, '\u00a0') : text
  const runs = joined(faces.known(bound, s.turned ? 'Fallback' : 'Inter'))
  const laid = s.turned ? runs.reverse().map((r): Run => ({ ...r, noWrap: true })) : runs
  return s.newLine ? [{ text: '\n', font: 'Inter' }, ...laid] : laid
}

/** Pictures turn the letters of each word only, and drop blanks at its ends. */
function inWords(run: Run): Run[] {
  if (!run.noWrap) return [run]
  const words = run.text.split('\u00a0').reverse()
  return words.flatMap((text, i) =>
    text === '' ? [] : [{ ...run, text, ...(i > 0 ? { after: true as const } : {}) }],
  )
}

function inOneFont(runs: Run[]): Run[] {
  const font = runs.some((r) => r.font === 'Fallback') ? 'Fallback' : 'Inter'
  return runs.length > 0 ? [{ text: runs.map((r) => r.text).join(''), font }] : []
}

const open = (bytes: Uint8Array): Font => create(bytes as Buffer) as Font

const tidy = (text: string): string => text.replace(loneHalf, MISSING).normalize('NFC').replace(control, ' ')

function joined(parts: { c: string; font: Face }[]): Run[] {
  const runs: Run[] = []
  for (const { c, font } of parts) {
    const last = runs.at(-1)
    // A space stays in the run it follows, so that words in another script keep their spaces.
    if (last && (last.font === font || c === ' ')) last.text += c
    else runs.push({ text: c, font })
  }
  return runs
}
