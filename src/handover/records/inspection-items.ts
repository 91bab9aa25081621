/** What is looked at in an inspection of a line, one item after the other, each passed, failed or not applicable. */
import type { Line } from '../../plan/types'
import type { Words } from '../words'

export interface InspectionItem {
  id: string
  text: string
}

/** The list for one line, in the order in which one walks along it; ids stay, whatever the language. */
export function inspectionItems(line: Line, words: Words): InspectionItem[] {
  const { checks: k } = words
  const items: [string, string, boolean][] = [
    ['parts', k.parts, true],
    ['brackets', k.brackets, true],
    ['heads', k.heads, true],
    ['loops', k.loops, true],
    ['tie-backs', k.tieBacks, line.tieBacks.length > 0],
    ['straps', k.straps, line.tieBacks.length > 0],
    ['spools', k.spool, line.tieBacks.length > 0],
    ['rope', k.rope, true],
    ['clamp', k.clamp, true],
    ['clamp-bolts', k.clampBolts, true],
    ['absorber', k.absorber, line.absorber !== null],
    ['tension', k.tension, true],
    ['room', k.room, true],
    ['rescue', k.rescue, true],
  ]
  return items.filter(([, , applies]) => applies).map(([id, text]) => ({ id, text }))
}
