/**
 * Letters that the papers' fonts have. Inter carries Latin, Greek and Cyrillic; DejaVu Sans stands in for Armenian,
 * Georgian, Hebrew, Arabic and many signs. What neither has is shown as an empty box with a note that says so: a name
 * is never dropped in silence.
 */
import { create, type Font } from 'fontkit'
import type { PaperFonts } from './engine'

const MISSING = '\u25a1'

export interface Letters {
  /** A text in runs of one font each, with a box for every letter that no font has. */
  runs(text: string): { text: string; font: 'Inter' | 'Fallback' }[]
  /** The same as one string for pictures, which take one font for a whole label. */
  label(text: string): { text: string; font: 'Inter' | 'Fallback' }
  /** Whether a label has needed the stand-in font so far. */
  stoodIn(): boolean
  /** Letters that were replaced so far. */
  missing(): string[]
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is to be dropped
const control = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u2028\u2029]/g
/** Joins, direction marks and variation signs carry no shape of their own. */
const shapeless = /\p{Default_Ignorable_Code_Point}/gu
const loneHalf = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g

export function letters(fonts: PaperFonts): Letters {
  const [inter, fallback] = [open(fonts.regular), open(fonts.fallback)]
  const lost = new Set<string>()
  let stoodIn = false
  const fontOf = (c: string): 'Inter' | 'Fallback' | null => {
    const code = c.codePointAt(0) ?? 0
    if (code < 0x20 || inter.hasGlyphForCodePoint(code)) return 'Inter'
    return fallback.hasGlyphForCodePoint(code) ? 'Fallback' : null
  }
  const known = (text: string): { c: string; font: 'Inter' | 'Fallback' }[] =>
    [...tidy(text)].map((c) => {
      const font = fontOf(c)
      if (font) return { c, font }
      lost.add(c)
      return { c: MISSING, font: fontOf(MISSING) ?? 'Fallback' }
    })
  return {
    runs: (text) => joined(known(text)),
    label: (text) => {
      const all = known(text)
      const font = all.some((k) => k.font === 'Fallback') ? 'Fallback' : 'Inter'
      stoodIn ||= font === 'Fallback'
      return { text: all.map((k) => k.c).join(''), font }
    },
    stoodIn: () => stoodIn,
    missing: () => [...lost],
  }
}

const open = (bytes: Uint8Array): Font => create(bytes as Buffer) as Font

const tidy = (text: string): string =>
  text.replace(loneHalf, MISSING).normalize('NFC').replace(control, ' ').replace(shapeless, '')

function joined(parts: { c: string; font: 'Inter' | 'Fallback' }[]) {
  const runs: { text: string; font: 'Inter' | 'Fallback' }[] = []
  for (const { c, font } of parts) {
    const last = runs.at(-1)
    // A space stays in the run it follows, so that words in another script keep their spaces.
    if (last && (last.font === font || c === ' ')) last.text += c
    else runs.push({ text: c, font })
  }
  return runs
}
