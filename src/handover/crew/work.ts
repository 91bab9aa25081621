/** Order of work with its cautions, checks before use, who may use the line, and what lies below it. */
import type { Column, Content } from 'pdfmake/interfaces'
import { say, table } from '../pdf/paper'
import type { SheetContext } from './sheet'

/** In the order in which it is done; a box to tick before each step. */
export function stepList(c: SheetContext): Content {
  const { words: w, facts, read } = c
  const s = w.steps
  const steps = [
    s.protect,
    s.notUsed,
    s.compare,
    s.parts,
    s.count,
    s.brackets,
    ...(facts.places.some((p) => p.plate > 0) ? [s.plates] : []),
    s.heads,
    ...(facts.tieBacks.length > 0 ? [s.tieBacks, s.spool] : []),
    s.layRope,
    s.markRope,
    s.clampBolts,
    s.eyePlace(read.length(facts.rope.eyeOffset), facts.rope.tensionerAt),
    s.tension(read.both(facts.rope.tension, 'N')),
    s.release,
    s.measure,
    s.inspect,
  ]
  return ticked(c, steps, true)
}

export function checkList(c: SheetContext): Content {
  const { words: w, file, read } = c
  const k = w.checks
  const { low, high } = file.line.serviceTemperature
  const list = [
    k.tag,
    k.tension,
    k.straps,
    k.spool,
    k.clamp,
    k.rope,
    ...(file.study.input.absorber ? [k.absorber] : []),
    k.brackets,
    k.loops,
    k.people(file.line.workersAtOnce),
    k.connectors,
    k.temperature(read.both(low, 'degC'), read.both(high, 'degC')),
    k.room,
    k.rescue,
    k.afterFall,
  ]
  return ticked(c, list, false)
}

/** A drawn box, not a letter: it prints in any font. */
const box: Column = { canvas: [{ type: 'rect', x: 0, y: 1.5, w: 9, h: 9, lineWidth: 0.9 }], width: 16 }

function ticked({ letters }: SheetContext, texts: string[], numbered: boolean): Content {
  const stack = texts.map(
    (text, i): Content => ({
      columns: [box, ...(numbered ? [{ text: `${i + 1}.`, width: 17, bold: true }] : []), say(letters, text)],
      columnGap: 2,
      margin: [0, 0, 0, 2],
      unbreakable: true,
    }),
  )
  return { stack }
}

export function crewTable({ words: w, letters, facts, read }: SheetContext): Content {
  const t = w.table
  if (facts.workers.length === 0) return say(letters, w.none)
  const rows = facts.workers.map((k): string[] => [
    k.worker,
    read.both(k.mass, 'kg'),
    k.connector,
    read.length(k.length),
  ])
  return table(letters, {
    head: [t.worker, t.mass, t.connector, ''],
    rows,
    widths: ['*', 130, '*', 120],
    size: 9.5,
  })
}

/** Gaps under this plan's rooms; which line governs each is told where it is not this one. */
export function belowTable({ words: w, letters, input, file, read }: SheetContext): Content {
  const t = w.table
  const { obstacles } = input.study.results
  if (obstacles.length === 0) return say(letters, w.none)
  const rows = obstacles.map((o): string[] => {
    const thing =
      input.plan.obstacles.find((p) => p.id === o.id) ?? input.plan.girders.find((g) => g.id === o.id)
    const line = o.line && o.line !== file.line.id ? ` (${nameOfLine(input.plan.lines, o.line)})` : ''
    const gap = o.gap === null && o.unknown === undefined ? '-' : read.length(o.gap)
    return [`${thing?.name ?? o.id}${line}`, gap]
  })
  return table(letters, { head: [t.what, t.gap], rows, widths: ['*', 150], size: 9 })
}

const nameOfLine = (lines: { id: string; name: string }[], id: string): string =>
  lines.find((l) => l.id === id)?.name ?? id
