/**
 * From a document definition to the bytes of a PDF: text stays text, drawings stay vectors, fonts are embedded. The
 * same in Node and in a browser's worker; nothing is read from the network or from other files.
 */
import pdfMake from 'pdfmake'
import type { TDocumentDefinitions } from 'pdfmake/interfaces'

/** Whole font files, as bytes: two weights to set papers in, and two that stand in for letters those lack. */
export interface PaperFonts {
  regular: Uint8Array
  bold: Uint8Array
  fallback: Uint8Array
  fallbackBold: Uint8Array
}

/** The parts of pdfmake that Node and browser share; its own types know only one of them. */
interface Engine {
  virtualfs: { writeFileSync(name: string, data: unknown): void; existsSync(name: string): boolean }
  setFonts(fonts: Record<string, Record<string, string>>): void
  setUrlAccessPolicy?(allowed: (url: string) => boolean): void
  setLocalAccessPolicy?(allowed: (path: string) => boolean): void
  setProgressCallback(callback: (done: number) => void): void
  createPdf(definition: TDocumentDefinitions): { getBuffer(): Promise<Uint8Array> }
}

const engine = pdfMake as unknown as Engine

/**
 * File names are the fonts' own PostScript names: drawings ask the PDF for a font by this name, and it knows those that
 * a text has used under exactly that name.
 */
const FILES = {
  regular: 'Inter-Regular',
  bold: 'Inter-Bold',
  fallback: 'DejaVuSans',
  fallbackBold: 'DejaVuSans-Bold',
} as const

const family = (normal: string, bold: string) => ({ normal, bold, italics: normal, bolditalics: bold })

function prepare(fonts: PaperFonts): void {
  for (const key of Object.keys(FILES) as (keyof PaperFonts)[]) {
    engine.virtualfs.writeFileSync(FILES[key], asBuffer(fonts[key]))
  }
  engine.setFonts({
    Inter: family(FILES.regular, FILES.bold),
    Fallback: family(FILES.fallback, FILES.fallbackBold),
  })
  engine.setUrlAccessPolicy?.(() => false)
  engine.setLocalAccessPolicy?.(() => false)
}

/** The engine's file store of the browser wants its own kind of buffer; a plain copy of the bytes serves both. */
function asBuffer(bytes: Uint8Array): unknown {
  return typeof Buffer === 'undefined' ? bytes : Buffer.from(bytes)
}

/** The PDF; `progress` hears the share done, 0 to 1. */
export async function pdfBytes(
  definition: TDocumentDefinitions,
  fonts: PaperFonts,
  progress: (share: number) => void = () => {},
): Promise<Uint8Array> {
  prepare(fonts)
  engine.setProgressCallback(progress)
  const buffer = await engine.createPdf(definition).getBuffer()
  return new Uint8Array(buffer)
}

/** Page objects of a PDF as this engine writes it: their dictionaries stand outside the packed streams. */
export function pageCount(bytes: Uint8Array): number {
  const text = new TextDecoder('latin1').decode(bytes)
  return text.match(/\/Type \/Page\b/g)?.length ?? 0
}
