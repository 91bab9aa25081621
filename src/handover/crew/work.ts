/** Order of work with its cautions, and what is looked at before each use. */
import type { Column, Content } from 'pdfmake/interfaces'
import { say } from '../pdf/paper'
import type { SheetContext } from './sheet'

/** In the order in which it is done; a box to tick before each step. */
export function stepList(c: SheetContext): Content[] {
  const { words: w, facts, read } = c
  const s = w.steps
  const steps = [
    s.protect,
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
    s.tension,
    s.release,
    s.measure,
    s.inspect,
  ]
  return ticked(c, steps, true)
}

export function checkList(c: SheetContext): Content[] {
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
    k.temperature(read.both(low, 'degC'), read.both(high, 'degC')),
    k.room,
    k.rescue,
    k.afterFall,
  ]
  return ticked(c, list, false)
}

/** A drawn box, not a letter: it prints in any font. Anew each time, for the paper's engine writes into it. */
const box = (): Column => ({
  canvas: [{ type: 'rect', x: 0, y: 1.5, w: 9, h: 9, lineWidth: 0.9 }],
  width: 12,
})

function ticked({ letters }: SheetContext, texts: string[], numbered: boolean): Content[] {
  return texts.map(
    (text, i): Content => ({
      columns: [
        box(),
        ...(numbered ? [{ text: `${i + 1}`, width: 15, bold: true }] : []),
        say(letters, text),
      ],
      columnGap: 3,
      margin: [0, 0, 0, 1.5],
      unbreakable: true,
    }),
  )
}
