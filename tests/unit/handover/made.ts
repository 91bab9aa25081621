/** A studied sample and its papers' text, shared by the tests of the hand-over. */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TDocumentDefinitions } from 'pdfmake/interfaces'
import { paperFonts } from '../../../src/cli/paper-fonts'
import type { HandoverInput } from '../../../src/handover/input'
import { pdfBytes } from '../../../src/handover/pdf/engine'
import { readPlan } from '../../../src/plan/read'
import type { Plan } from '../../../src/plan/types'
import { study } from '../../../src/study/study'

const fonts = paperFonts()

export const MADE_AT = '2026-03-14T09:30:00Z'

export function samplePlan(name = 'thin-margins'): Plan {
  const read = readPlan(readFileSync(`samples/${name}.plan.json`, 'utf8'))
  if (!read.ok) throw new Error(JSON.stringify(read.faults))
  return read.plan
}

/**
 * Without the falls in time, which take long and change nothing of how papers are made; for papers that tell nothing of
 * the rooms' sizes without these too.
 */
export const inputOf = (plan: Plan, wholeRooms = true): HandoverInput => ({
  plan,
  study: study(plan, { withoutTime: true, wholeRooms }),
  madeAt: MADE_AT,
  revision: 'C',
  fonts,
})

/** Poppler's tools read the PDF as any other program would; where they are missing, tests that need them are skipped. */
export const hasPoppler = ['pdftotext', 'pdffonts', 'pdfinfo'].every((tool) =>
  (process.env.PATH ?? '').split(':').some((folder) => existsSync(join(folder, tool))),
)

export interface ReadPdf {
  pages: string[]
  /** All text with every run of white space as one space. */
  text: string
  fonts: { name: string; embedded: boolean }[]
}

const flat = (text: string): string => text.replace(/\s+/g, ' ')

export const bytesOf = (definition: TDocumentDefinitions): Promise<Uint8Array> => pdfBytes(definition, fonts)

export const readBack = async (definition: TDocumentDefinitions): Promise<ReadPdf> =>
  readBytes(await bytesOf(definition))

/** What `look` reads of the bytes as a file, which is gone afterwards. */
function asFile<T>(bytes: Uint8Array, look: (file: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'papers-'))
  const file = join(folder, 'paper.pdf')
  try {
    writeFileSync(file, bytes)
    return look(file)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

const poppler = (tool: string, ...args: string[]): string =>
  execFileSync(tool, args, { encoding: 'utf8', maxBuffer: 2 ** 28 })

export const readBytes = (bytes: Uint8Array): ReadPdf =>
  asFile(bytes, (file) => {
    const raw = poppler('pdftotext', '-raw', '-enc', 'UTF-8', file, '-')
    const pages = raw.split('\f').filter((p) => p.trim() !== '')
    const list = poppler('pdffonts', file).trim().split('\n').slice(2)
    const found = list.map((l) => {
      const words = l.trim().split(/\s+/)
      return { name: words[0] ?? '', embedded: words.at(-5) === 'yes' }
    })
    return { pages: pages.map(flat), text: flat(pages.join(' ')), fonts: found }
  })

const BOX = /<page width="([\d.]+)|<word xMin="([-\d.]+)" yMin="[^"]*" xMax="([\d.]+)"/g

/** How near any word comes to the left and the right edge of its page, points. */
export const edgesOf = (bytes: Uint8Array): { left: number; right: number } =>
  asFile(bytes, (file) => {
    const edges = { left: Number.POSITIVE_INFINITY, right: Number.POSITIVE_INFINITY }
    let width = 0
    for (const [, page, low, high] of poppler('pdftotext', '-bbox', file, '-').matchAll(BOX)) {
      if (page !== undefined) width = Number(page)
      else {
        edges.left = Math.min(edges.left, Number(low))
        edges.right = Math.min(edges.right, width - Number(high))
      }
    }
    return edges
  })
