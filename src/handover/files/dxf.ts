/**
 * Drawings as DXF in real units: metres, one layer for each kind of thing, elevation and plan side by side in one file.
 * The same marks as on paper, so the two can't differ.
 */
import { Colors, DxfWriter, point2d, point3d, Units } from '@tarikjabiri/dxf'
import type { DimensionMark, Layer, Mark, PathMark, TextMark } from '../../drawings/marks'
import type { Point } from '../../drawings/view'

const colors: Record<Layer, number> = {
  GIRDERS: Colors.White,
  LOOPS: Colors.White,
  STANCHIONS: Colors.White,
  'TIE-BACKS': Colors.Yellow,
  'ROPE-INSTALLED': Colors.White,
  'ROPE-FALL': Colors.Cyan,
  'FALL-ROOM': Colors.Blue,
  CLASHES: Colors.Red,
  OBSTACLES: Colors.Green,
  DIMENSIONS: Colors.White,
  TEXT: Colors.White,
}

/** Height of texts and size of end strokes, m: legible at the usual 1 to 100. */
const TEXT_HEIGHT = 0.2

export interface DxfPart {
  marks: readonly Mark[]
  /** Where the drawing's own origin lies in the file, m. */
  at: Point
  title: string
}

/** The DXF text of drawings that stand beside each other. */
export function dxfText(parts: readonly DxfPart[]): string {
  const dxf = new DxfWriter()
  dxf.setUnits(Units.Meters)
  for (const layer of Object.keys(colors) as Layer[]) dxf.addLayer(layer, colors[layer], 'Continuous')
  for (const part of parts) {
    addText(dxf, 'TEXT', [part.at[0], part.at[1] + TEXT_HEIGHT * 4], part.title)
    for (const mark of part.marks) addMark(dxf, mark, part.at)
  }
  return dxf.stringify()
}

function addMark(dxf: DxfWriter, mark: Mark, at: Point): void {
  dxf.setCurrentLayerName(mark.layer)
  if (mark.kind === 'path') addPath(dxf, mark, at)
  if (mark.kind === 'dot') dxf.addCircle(point3d(mark.at[0] + at[0], mark.at[1] + at[1]), 0.03)
  if (mark.kind === 'text') addText(dxf, mark.layer, shifted(mark, at), mark.text)
  if (mark.kind === 'dimension') addDimension(dxf, mark, at)
}

const shifted = (mark: TextMark, at: Point): Point => [
  mark.at[0] + at[0],
  mark.at[1] + at[1] + TEXT_HEIGHT * 0.3,
]

function addPath(dxf: DxfWriter, mark: PathMark, at: Point): void {
  const vertices = mark.points.map(([x, y]) => ({ point: point2d(x + at[0], y + at[1]) }))
  if (vertices.length > 1) dxf.addLWPolyline(vertices, { flags: mark.closed ? 1 : 0 })
}

/** Line ends and control characters would break the file's pairs of lines; other letters are written by their number. */
const plain = (text: string): string =>
  [...text.replace(/\p{Cc}/gu, ' ')]
    .map((c) => {
      const code = c.codePointAt(0) ?? 32
      if (code < 127) return c
      return [...Array(c.length).keys()].map((i) => `\\U+${hex(c.charCodeAt(i))}`).join('')
    })
    .join('')

const hex = (code: number): string => code.toString(16).toUpperCase().padStart(4, '0')

function addText(dxf: DxfWriter, layer: Layer, [x, y]: Point, text: string): void {
  dxf.setCurrentLayerName(layer)
  dxf.addText(point3d(x, y), TEXT_HEIGHT, plain(text))
}

/** A line with its text: readable in every program, whatever it makes of dimension styles. */
function addDimension(dxf: DxfWriter, mark: DimensionMark, at: Point): void {
  const away = mark.away < 0 ? -TEXT_HEIGHT * 4 : TEXT_HEIGHT * 4
  const move = ([x, y]: Point): Point =>
    mark.axis === 'across' ? [x + at[0], y + at[1] + away] : [x + at[0] + away, y + at[1]]
  const [a, b] = [move(mark.from), move(mark.to)]
  dxf.addLine(point3d(a[0], a[1]), point3d(b[0], b[1]))
  addText(dxf, 'DIMENSIONS', [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2 + TEXT_HEIGHT * 0.3], mark.text)
}
