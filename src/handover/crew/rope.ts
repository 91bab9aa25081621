/** The rope on the crew sheet: laid out as a picture with its lengths, and its torque and tensions in big figures. */
import type { Column, Content } from 'pdfmake/interfaces'
import { ropeStrip } from '../../drawings/rope-strip'
import { CLAMP_TORQUE } from '../../solver/lengths'
import { drawing, inner, say, table } from '../pdf/paper'
import type { PlaceFacts } from './facts'
import type { SheetContext } from './sheet'

/** Order of parts, cut, mark and place of the eye, on one picture. */
export function ropePicture({ words: w, letters, facts, read, file, sheet }: SheetContext): Content[] {
  const { rope, places } = facts
  const r = w.rope
  if (places.length < 2) return []
  const picture = ropeStrip(
    {
      stanchions: places.map((p) => p.id),
      tensionerAt: file.line.absorberAt,
      absorber: file.study.input.absorber !== null,
      words: r,
      cut: `${r.cut} ${read.length(rope.cut)}; ${r.tail}: ${read.length(rope.tail)}`,
      mark: `${r.mark}: ${read.length(rope.mark)}, ${r.markNote}`,
      eyeOffset: read.length(rope.eyeOffset),
      notToScale: r.notToScale,
    },
    inner(sheet).width,
  )
  return [say(letters, chainText(file, places, w)), drawing(picture, letters)]
}

/** anchor - clamp - rope - eye - tensioner - absorber - anchor, from START on. */
function chainText(
  file: SheetContext['file'],
  places: PlaceFacts[],
  { rope: r }: SheetContext['words'],
): string {
  const { line, study } = file
  const absorber = study.input.absorber ? r.absorber : r.noAbsorber
  const pieces = [r.anchor, r.clamp, r.rope, r.eye, r.tensioner, absorber, r.anchor]
  if (line.absorberAt === 'start') pieces.reverse()
  const [first, last] = [places[0]?.id ?? '', places.at(-1)?.id ?? '']
  return r.chainOrder(first, last, pieces.join(' - '))
}

/** Torque, tension and tension by temperature, in big figures side by side. */
export function figures(c: SheetContext): Content {
  const { words: w, letters, facts, read } = c
  const { rope } = facts
  const r = w.rope
  const [low, high] = [rope.tension * (1 - rope.tolerance), rope.tension * (1 + rope.tolerance)]
  const between = `${r.tolerance} ${read.both(low, 'N')} - ${read.both(high, 'N')}`
  const torque = r.torqueText(CLAMP_TORQUE.poundFeet, CLAMP_TORQUE.newtonMetres)
  const box = (width: number, what: string, value: string, note: string): Column => ({
    width,
    stack: [
      say(letters, what, { bold: true }),
      say(letters, value, { bold: true, size: 14 }),
      say(letters, note, { size: 8 }),
    ],
  })
  const at = r.tensionNote(read.both(rope.installTemperature, 'degC'))
  return {
    columns: [
      box(158, r.torque, torque, r.torqueNote),
      box(158, r.tension, read.both(rope.tension, 'N'), `${between}; ${at}`),
      { stack: temperatureTables(c), width: '*' },
    ],
    columnGap: 14,
    margin: [0, 2, 0, 2],
    unbreakable: true,
  }
}

const ACROSS = 7

/** Temperatures above tensions, from cold to warm; a long range runs on below. */
function temperatureTables({ words: w, letters, facts, read }: SheetContext): Content[] {
  const t = w.table
  const entries = facts.temperatures.map((e) => [
    read.both(e.temperature, 'degC').replace('\u00a0(', '\n(').replace(' (', '\n('),
    read.both(e.tension, 'N').replace(' (', '\n('),
  ])
  const pieces = Array.from({ length: Math.ceil(entries.length / ACROSS) }, (_, i): Content => {
    const some = entries.slice(i * ACROSS, (i + 1) * ACROSS)
    const head = ['', ...some.map((e) => e[0]!)]
    const rows = [[t.tension, ...some.map((e) => say(letters, e[1]!, { bold: true }))]]
    return table(letters, {
      head,
      rows,
      widths: [38, ...some.map(() => '*')],
      size: 8.5,
      boxed: true,
      tight: true,
    })
  })
  return [...pieces, say(letters, `${w.sheet.temperature}. ${w.sheet.temperatureNote}`, { size: 8 })]
}
