/** The crew sheet as a PDF, in the largest type with which it stays on two pages. */

import type { HandoverInput, LineFile } from '../input'
import { ownTexts } from '../own-texts'
import { pageCount, pdfBytes } from '../pdf/engine'
import { letters } from '../pdf/letters'
import type { Words } from '../words'
import { crewSheet, SHEET_SIZES } from './sheet'

/** Pages that a crew can hold in one hand: front and back of one leaf. */
const MOST_PAGES = 2

/** More rows than this never fit in the larger types, so that these need not be tried. */
const MANY = 8

/** More rows than this fit on two pages in no type, so that only the smallest is set. */
const TOO_MANY = 24

export async function crewSheetBytes(
  input: HandoverInput,
  file: LineFile,
  words: Words,
): Promise<Uint8Array> {
  const rows = file.line.stanchions.length + file.line.tieBacks.length
  const sizes = SHEET_SIZES.slice(rows > TOO_MANY ? -1 : rows > MANY ? -2 : 0)
  let bytes: Uint8Array | null = null
  for (const size of sizes) {
    bytes = await pdfBytes(
      crewSheet(input, file, words, letters(input.fonts, ownTexts(input.plan)), size),
      input.fonts,
    )
    if (pageCount(bytes) <= MOST_PAGES) break
  }
  return bytes!
}
