/** What is needed, who may use the line, what lies below it, and what is done if someone hangs in it. */
import type { Content } from 'pdfmake/interfaces'
import { rescuePlanGaps, rescuePlanOf } from '../../plan/records/log'
import type { SheetContext } from './sheet'

/** A heading in the line of its text. */
const runIn = ({ letters, words }: SheetContext, head: string, text: string): Content => ({
  text: [...letters.runs(`${head}${words.colon} `).map((r) => ({ ...r, bold: true })), ...letters.runs(text)],
  margin: [0, 1, 0, 2],
})

/** Every part with its number; lengths of rope and straps where they are cut or chosen. */
export function neededList(c: SheetContext): Content {
  const { file, facts, read } = c
  const { input } = file.study
  const parts = [
    ...input.stanchions.flatMap((s) => [s.part.name, s.bracket.name]),
    ...input.stanchions.flatMap((s) => s.tieBacks.map((t) => t.part.name)),
    ...(input.absorber ? [input.absorber.name] : []),
    ...input.hardware.map((h) => h.name),
  ]
  const counts = new Map<string, number>()
  for (const name of parts) counts.set(name, (counts.get(name) ?? 0) + 1)
  const rope = `${input.rope.name}: ${read.length(facts.rope.cut)}`
  return runIn(
    c,
    c.words.sheet.needed,
    [...[...counts].map(([name, n]) => `${n}\u00a0x ${name}`), rope].join('; '),
  )
}

export function crewList(c: SheetContext): Content {
  const { words: w, facts, read } = c
  const texts = facts.workers.map(
    (k) =>
      `${k.worker}: ${k.connector}, ${read.length(k.length)}; ${w.table.mass.toLowerCase()} ${read.both(k.mass, 'kg')}`,
  )
  return runIn(c, w.sheet.crew, [...new Set(texts)].join('; ') || w.none)
}

/** What shares plan area with a room of this plan, and what is left; which line governs is told where it is another. */
export function belowList(c: SheetContext): Content {
  const { words: w, input, file, read } = c
  const below = input.study.results.obstacles.filter((o) => o.gap !== null || o.unknown !== undefined)
  const texts = below.map((o) => {
    const thing =
      input.plan.obstacles.find((p) => p.id === o.id) ?? input.plan.girders.find((g) => g.id === o.id)
    const other = input.plan.lines.find((l) => l.id === o.line && l.id !== file.line.id)
    return `${thing?.name ?? o.id}${other ? ` (${other.name})` : ''}: ${read.length(o.gap)}`
  })
  return runIn(c, w.sheet.below, texts.join('; ') || w.none)
}

/** The rescue plan as recorded, or that there is none. */
export function rescueText(c: SheetContext): Content {
  const { words: w, input, file } = c
  const record = rescuePlanOf(input.plan, file.line.id)
  if (!record || rescuePlanGaps(record).length > 0) return runIn(c, w.sheet.rescue, w.sheet.noRescue)
  const { method, gear, people, minutes } = record
  const said = w.sheet.rescueText(sentence(method), gear.trim().replace(/\.$/, ''), people, minutes)
  return runIn(c, w.sheet.rescue, said)
}

const sentence = (text: string): string => (/[.!?]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`)
