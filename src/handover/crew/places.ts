/** Where the crew begins, where every stanchion and tie-back goes, and where it writes down what it measured. */
import type { Content } from 'pdfmake/interfaces'
import { say, table } from '../pdf/paper'
import type { PlaceFacts } from './facts'
import type { SheetContext } from './sheet'

/** Which end, which loop is the first, and how to notice that it is the wrong one. */
export function startBlock({ words: w, letters, facts, read }: SheetContext): Content[] {
  const { start } = facts
  const aside = facts.places.some((p) => Math.abs(p.offset) >= 0.0005)
  const fill: Content = {
    columns: [
      { ...say(letters, w.sheet.startFill, { bold: true }), width: 'auto' },
      { canvas: [{ type: 'line', x1: 4, x2: 170, y1: 11, y2: 11, lineWidth: 0.8 }], width: 176 },
      { ...say(letters, aside ? w.sheet.sideNote : ''), width: '*' },
    ],
    columnGap: 6,
    margin: [0, 2, 0, 2],
  }
  if (!start) return [fill]
  const note = w.sheet.startNote(
    read.length(start.firstLoop),
    read.length(start.spacing),
    start.lastNumber,
    read.length(start.lastFromEnd),
  )
  const row =
    start.rows > 1
      ? ` ${w.sheet.rowNote(start.row, sideText(w, read.length, start.offset).replace('\n', ' '))}`
      : ''
  return [say(letters, `${note}${row}`), fill]
}

type Row = (string | Content)[]

/** One line for each stanchion; a column that would say the same of all stands as a sentence below. */
export function placesTable(c: SheetContext): Content[] {
  const { words: w, letters, facts } = c
  const { places } = facts
  const t = w.table
  const aside = places.some((p) => Math.abs(p.offset) >= 0.0005)
  const plates = places.some((p) => p.plate > 0)
  const [first, second] = c.read.systems
  const rows = places.map(
    (p): Row => [
      say(letters, p.isEnd ? `${p.id} (${t.end})` : p.id, { bold: true }),
      ...pairCells(c, p.station, true),
      ...(p.fromLast === null ? ['', ''] : pairCells(c, p.fromLast, false)),
      ...loopCells(c, p),
      p.tube ? t.loopRange(...p.tube) : w.none,
      ...(aside ? [sideText(w, c.read.stacked, p.offset)] : []),
      ...(plates ? [p.plate > 0 ? c.read.stacked(p.plate) : w.none] : []),
      '',
    ],
  )
  const head = [
    t.stanchion,
    `${t.fromStart}, ${first}`,
    second,
    `${t.fromLast}, ${first}`,
    second,
    t.betweenLoops,
    t.fromLoop,
    t.tube,
    ...(aside ? [t.offset] : []),
    ...(plates ? [t.plate] : []),
    t.measured,
  ]
  const widths = aside
    ? [66, 92, 46, 82, 44, 52, '*', 54, 58, ...(plates ? [44] : []), plates ? 48 : 64]
    : [78, 100, 48, 88, 44, 60, '*', 58, ...(plates ? [48] : []), 76]
  const notes = [
    ...(aside || places.length === 0 ? [] : [w.sheet.allOnCentre]),
    ...(plates || places.length === 0 ? [] : [w.sheet.noPlates]),
    ...madeOf(c),
  ]
  return [
    table(letters, { head, rows, widths, size: c.size, boxed: true, tight: true }),
    say(letters, notes.join(' ')),
  ]
}

/** A length in the plan's own system and in the other, in two cells. */
function pairCells({ letters, read }: SheetContext, m: number, bold: boolean): Content[] {
  const [own, other] = read.bare(m)
  return [say(letters, own, { bold }), say(letters, other)]
}

function loopCells({ words: w, read }: SheetContext, p: PlaceFacts): string[] {
  const t = w.table
  if (p.before === null || p.after === null) return [t.beyondLoops, '']
  if (p.before === p.after) return [t.atLoop(p.before), '']
  return [`${p.before} - ${p.after}`, read.length(p.past)]
}

function sideText(w: SheetContext['words'], length: (m: number) => string, offset: number): string {
  const t = w.table
  if (Math.abs(offset) < 0.0005) return t.centre
  const size = length(Math.abs(offset))
  return offset > 0 ? t.left(size) : t.right(size)
}

/** Parts of the stanchions: once where all are the same, else with the stanchions they belong to. */
function madeOf({ words: w, facts }: SheetContext): string[] {
  const kinds = new Map<string, string[]>()
  for (const p of facts.places) {
    const what = `${p.part}, ${p.bracket}`
    kinds.set(what, [...(kinds.get(what) ?? []), p.id])
  }
  const texts = [...kinds].map(([what, ids]) => (kinds.size > 1 ? `${ids.join(', ')}: ${what}` : what))
  return texts.length > 0 ? [`${w.sheet.madeOf}: ${texts.join('; ')}.`] : []
}

export function tieBackTable(c: SheetContext): Content {
  const { words: w, letters, facts, read, input, file } = c
  const t = w.table
  if (facts.tieBacks.length === 0) return say(letters, w.none)
  const several = (input.plan.girders.find((g) => g.id === file.line.girder)?.loops.length ?? 0) > 1
  const loop = (n: number, row: string): Content =>
    say(letters, several ? `${n}, ${t.row(row)}` : String(n), { bold: true })
  const rows = facts.tieBacks.map(
    (b): Row => [
      say(letters, b.id, { bold: true }),
      b.stanchion,
      loop(b.strapLoop, b.strapRow),
      loop(b.tensionerLoop, b.tensionerRow),
      read.length(b.legs[0]),
      read.length(b.legs[1]),
      read.length(b.needed),
    ],
  )
  const head = [
    t.tieBack,
    t.onStanchion,
    t.strapLoop,
    t.tensionerLoop,
    t.strapLeg,
    t.tensionerLeg,
    t.strapNeeded,
  ]
  return table(letters, {
    head,
    rows,
    widths: [36, 62, 82, 94, '*', '*', 158],
    size: c.size,
    boxed: true,
    tight: true,
  })
}

/** Boxes to fill in by hand, for the planner and the inspector. */
export function asBuiltBlock({ words: w, letters }: SheetContext): Content {
  const row = [w.sheet.asBuiltNote, `${w.table.tension}: ${w.rope.today}`, w.sheet.signed]
  const cells = row.map((text, i) => say(letters, text, { bold: i === 0 }))
  const head = ['', '', '']
  const widths = [200, 200, '*']
  return table(letters, { head, rows: [cells], widths, boxed: true, tight: true, rowHeight: 26, size: 8.5 })
}
