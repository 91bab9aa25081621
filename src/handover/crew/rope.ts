/** The rope on the crew sheet: order of parts, where to cut and mark, torque, tension, and tension against temperature. */
import type { Content } from 'pdfmake/interfaces'
import { CLAMP_TORQUE } from '../../solver/lengths'
import { say, table } from '../pdf/paper'
import type { SheetContext } from './sheet'

export function ropeBlock(c: SheetContext): Content[] {
  const { words: w, letters, facts, read } = c
  const { rope } = facts
  const r = w.rope
  const tolerance = [rope.tension * (1 - rope.tolerance), rope.tension * (1 + rope.tolerance)]
  const torque = `${CLAMP_TORQUE.poundFeet} lbf ft (${CLAMP_TORQUE.newtonMetres} N m)`
  const between = `${r.tolerance} ${read.both(tolerance[0]!, 'N')} - ${read.both(tolerance[1]!, 'N')}`
  const at = r.tensionNote(read.both(rope.installTemperature, 'degC'))
  const rows: [string, string, string][] = [
    [r.cut, read.length(rope.cut), `${r.tail}: ${read.length(rope.tail)}`],
    [r.mark, read.length(rope.mark), r.markNote],
    [r.eyeOffset, read.length(rope.eyeOffset), r.eyeOffsetNote(rope.tensionerAt)],
    [r.takeUp, read.length(rope.takeUp), ''],
    [r.torque, torque, r.torqueNote],
    [r.tension, read.both(rope.tension, 'N'), `${between}; ${at}`],
  ]
  const body = rows.map(([what, value, note]): (string | Content)[] => [
    what,
    say(letters, value, { bold: true, size: 11 }),
    note,
  ])
  return [
    say(letters, `${r.chain}. ${chainText(c)}`),
    table(letters, { head: ['', '', ''], rows: body, widths: [150, 150, '*'], size: 9 }),
  ]
}

/** anchor - clamp - rope - eye - tensioner - absorber - anchor, from START on. */
function chainText({ words: w, file, facts }: SheetContext): string {
  const r = w.rope
  const { line, study } = file
  const absorber = study.input.absorber ? `${r.absorber} (${study.input.absorber.name})` : r.noAbsorber
  const rope = `${r.rope} (${study.input.rope.name})`
  const pieces = [r.anchor, r.clamp, rope, r.eye, r.tensioner, absorber, r.anchor]
  if (line.absorberAt === 'start') pieces.reverse()
  const [first, last] = [facts.places[0]?.id ?? '', facts.places.at(-1)?.id ?? '']
  return r.chainOrder(first, last, pieces.join(' - '))
}

/** Temperatures across, tensions under them; long tables run on below. */
export function temperatureTable({ words: w, letters, facts, read }: SheetContext): Content[] {
  const t = w.table
  const entries = facts.temperatures.map((e) => [
    read.both(e.temperature, 'degC').replace(' (', '\n('),
    read.both(e.tension, 'N').replace(' (', '\n('),
  ])
  const across = 8
  const pieces = Array.from({ length: Math.ceil(entries.length / across) }, (_, i): Content => {
    const some = entries.slice(i * across, (i + 1) * across)
    const head = [t.temperature, ...some.map((e) => e[0]!)]
    const rows = [[t.tension, ...some.map((e) => e[1]!)]]
    return table(letters, { head, rows, widths: [70, ...some.map(() => '*')], size: 8.5 })
  })
  return [...pieces, say(letters, w.sheet.temperatureNote)]
}
