/** What every drawing function gives: its marks for files, its picture for screen and paper, and its scale. */
import type { Mark } from './marks'
import type { SvgElement } from './svg'
import type { View } from './view'

export interface Drawing {
  marks: Mark[]
  picture: SvgElement
  view: View
  /** 1 to this on paper; null on the screen and where heights and lengths have scales of their own. */
  scale: number | null
}

/** The few words that stand in drawings; papers in other languages pass their own. */
export interface DrawingWords {
  into: (length: string, name: string) => string
  heightsScale: (ratio: string) => string
  farBelow: (name: string, length: string) => string
  underRoom: (length: string) => string
  freeFall: string
  lineDrop: string
  connector: string
  harness: string
  margin: string
  timeExcess: string
  needed: string
  there: string
  none: string
}

export const englishDrawingWords: DrawingWords = {
  into: (length, name) => `${length} into ${name}`,
  heightsScale: (ratio) => `heights drawn at ${ratio} times the length scale`,
  farBelow: (name, length) => `${name} ${length} below`,
  underRoom: (length) => `${length} under the room`,
  freeFall: 'free fall',
  lineDrop: 'line drop',
  connector: 'connector extension',
  harness: 'harness stretch',
  margin: 'margin below',
  timeExcess: 'more by the time method',
  needed: 'needed',
  there: 'there',
  none: 'not known',
}
