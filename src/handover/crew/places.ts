/** Where the crew begins, where every stanchion and tie-back goes, and where it writes down what it measured. */
import type { Content } from 'pdfmake/interfaces'
import { say, table } from '../pdf/paper'
import type { PlaceFacts } from './facts'
import type { SheetContext } from './sheet'

/** Which end, which loop is the first, and how to notice that it is the wrong one. */
export function startBlock({ words: w, letters, facts, read }: SheetContext): Content[] {
  const line: Content = {
    columns: [
      { ...say(letters, w.sheet.startFill, { bold: true }), width: 'auto' },
      { canvas: [{ type: 'line', x1: 6, x2: 190, y1: 11, y2: 11, lineWidth: 0.8 }], width: 200 },
    ],
    margin: [0, 2, 0, 4],
  }
  const { start } = facts
  if (!start) return [line, say(letters, w.sheet.sideNote)]
  const note = w.sheet.startNote(
    read.length(start.firstLoop),
    read.length(start.spacing),
    start.lastNumber,
    read.length(start.lastFromEnd),
  )
  return [say(letters, note), line, say(letters, w.sheet.sideNote)]
}

export function placesTable(c: SheetContext): Content {
  const { words: w, letters, facts, read } = c
  const t = w.table
  const rows = facts.places.map((p): string[] => [
    `${p.id}, ${p.isEnd ? t.end : t.intermediate}\n${p.part}, ${p.bracket}`,
    read.stacked(p.station),
    p.fromLast === null ? '' : read.stacked(p.fromLast),
    loopText(c, p),
    p.tube ? t.loopRange(...p.tube) : w.none,
    offsetText(c, p.offset),
    p.plate > 0 ? read.stacked(p.plate) : w.none,
  ])
  const head = [t.stanchion, t.fromStart, t.fromLast, t.loops, t.tube, t.offset, t.plate]
  const widths = ['*', 62, 62, 128, 42, 50, 44]
  return table(letters, { head, rows, widths, size: 9 })
}

function loopText({ words: w, read }: SheetContext, p: PlaceFacts): string {
  const t = w.table
  if (p.before === null || p.after === null) return t.beyondLoops
  if (p.before === p.after) return t.atLoop(p.before)
  return `${t.between(p.before, p.after)}\n${t.pastLoop(read.length(p.past), p.before)}`
}

function offsetText({ words: w, read }: SheetContext, offset: number): string {
  const t = w.table
  if (Math.abs(offset) < 0.0005) return t.centre
  const length = read.stacked(Math.abs(offset))
  return offset > 0 ? t.left(length) : t.right(length)
}

export function tieBackTable({ words: w, letters, facts, read, input, file }: SheetContext): Content {
  const t = w.table
  if (facts.tieBacks.length === 0) return say(letters, w.none)
  const several = (input.plan.girders.find((g) => g.id === file.line.girder)?.loops.length ?? 0) > 1
  const loop = (n: number, row: string): string => (several ? `${n}\n${t.row(row)}` : String(n))
  const rows = facts.tieBacks.map((b): string[] => [
    `${b.id}\n${b.part}`,
    b.stanchion,
    loop(b.strapLoop, b.strapRow),
    loop(b.tensionerLoop, b.tensionerRow),
    b.legs.map((l) => read.length(l)).join('\n'),
    read.stacked(b.needed),
    read.stacked(b.left),
  ])
  const head = [t.tieBack, t.onStanchion, t.strapLoop, t.tensionerLoop, t.legs, t.strapNeeded, t.strapLeft]
  return table(letters, { head, rows, widths: ['*', 52, 50, 58, 112, 78, 60], size: 9 })
}

/** Boxes to fill in by hand. */
export function asBuiltTable({ words: w, letters, facts, read }: SheetContext): Content[] {
  const t = w.table
  const rows = facts.places.map((p): string[] => [p.id, read.length(p.station), '', ''])
  const tension = [t.tension, read.both(facts.rope.tension, 'N'), '', '']
  const temperature = [t.temperature, read.both(facts.rope.installTemperature, 'degC'), '', '']
  return [
    say(letters, w.sheet.asBuiltNote),
    table(letters, {
      head: [t.stanchion, w.sheet.plan, t.measured, t.check],
      rows: [...rows, tension, temperature],
      widths: [90, 150, '*', 60],
      boxed: true,
      size: 9.5,
      rowHeight: 14,
    }),
    table(letters, { head: [w.sheet.signed], rows: [['']], widths: ['*'], boxed: true, rowHeight: 30 }),
  ]
}
