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

/** Without the falls in time, which take long and change nothing of how papers are made. */
export const inputOf = (plan: Plan): HandoverInput => ({
  plan,
  study: study(plan, { withoutTime: true, wholeRooms: true }),
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

export const readBack = async (definition: TDocumentDefinitions): Promise<ReadPdf> =>
  readBytes(await pdfBytes(definition, fonts))

export async function readBytes(bytes: Uint8Array): Promise<ReadPdf> {
  const folder = mkdtempSync(join(tmpdir(), 'papers-'))
  const file = join(folder, 'paper.pdf')
  try {
    writeFileSync(file, bytes)
    const raw = execFileSync('pdftotext', ['-raw', '-enc', 'UTF-8', file, '-'], { encoding: 'utf8' })
    const pages = raw.split('\f').filter((p) => p.trim() !== '')
    const list = execFileSync('pdffonts', [file], { encoding: 'utf8' }).trim().split('\n').slice(2)
    const found = list.map((l) => {
      const words = l.trim().split(/\s+/)
      return { name: words[0] ?? '', embedded: words.at(-5) === 'yes' }
    })
    return { pages: pages.map(flat), text: flat(pages.join(' ')), fonts: found }
  } finally {
    rmSync(folder, { recursive: true })
  }
}
