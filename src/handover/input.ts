/** What every paper is made from: a plan with its study, the time of printing, and the fonts to set it in. */
import type { MeshBounds } from '../drawings/obstacle-shapes'
import type { Line, Plan } from '../plan/types'
import type { LineDetail } from '../study/details'
import type { LineStudy } from '../study/line-study'
import type { LineResults } from '../study/results'
import type { SpreadResult } from '../study/spread/types'
import type { Study } from '../study/study'
import type { PaperFonts } from './pdf/engine'

export interface HandoverInput {
  plan: Plan
  study: Study
  /** When the papers are made, ISO 8601; handed in, so that the same input gives the same papers. */
  madeAt: string
  /** A word for this state of the plan, as 'C'; it stands beside the hash. */
  revision?: string
  fonts: PaperFonts
  /** Where the library that joins solids finds its engine: the address of manifold.wasm in a window, nothing in Node. */
  solidEngine?: string
  /** How far placed models reach, for the drawings. */
  meshes?: MeshBounds
  /** Spreads that were computed for exactly this plan, by line. */
  spreads?: { line: string; result: SpreadResult }[]
}

/** One line with everything known of it. */
export interface LineFile {
  line: Line
  study: LineStudy
  results: LineResults
  detail: LineDetail
}

export function lineFiles(input: Pick<HandoverInput, 'study'>): LineFile[] {
  return input.study.lines.flatMap((s, i) => {
    const detail = input.study.details[i]
    return detail ? [{ line: s.input.line, study: s, results: s.results, detail }] : []
  })
}

/** The first twelve characters: enough to tell plans apart by eye; the whole stands on the cover. */
export const shortHash = (hash: string): string => hash.slice(0, 12)

/** The day of an ISO time, as it is written; what is no time is shown as it stands. */
export const dayOf = (iso: string): string => (/^\d{4}-\d{2}-\d{2}/.test(iso) ? iso.slice(0, 10) : iso)
