/** Numbers drawn once into one picture, for any count of small labels in one draw call. */
import { CanvasTexture, LinearFilter } from 'three'

/** A cell's size in CSS pixels. */
export const CELL = { width: 24, height: 14 }
/** Cells side by side. */
export const COLUMNS = 16
/** Samples along a pixel's side. */
const SAMPLES = 2

export interface NumberAtlas {
  texture: CanvasTexture
  rows: number
  /** Cell of a number, from the upper left. */
  cell: (n: number) => [number, number]
}

/** Cells for `numbers`, white on clear; tinted when drawn. */
export function numberAtlas(numbers: readonly number[]): NumberAtlas {
  const rows = Math.max(1, Math.ceil(numbers.length / COLUMNS))
  const canvas = document.createElement('canvas')
  canvas.width = COLUMNS * CELL.width * SAMPLES
  canvas.height = rows * CELL.height * SAMPLES
  const pen = canvas.getContext('2d')!
  pen.scale(SAMPLES, SAMPLES)
  pen.font = '500 10px Inter, "Inter Variable", sans-serif'
  pen.textAlign = 'center'
  pen.textBaseline = 'middle'
  pen.fillStyle = '#fff'
  const places = new Map<number, [number, number]>()
  numbers.forEach((n, i) => {
    const [column, row] = [i % COLUMNS, Math.floor(i / COLUMNS)]
    places.set(n, [column, row])
    pen.fillText(String(n), (column + 0.5) * CELL.width, (row + 0.5) * CELL.height)
  })
  const texture = new CanvasTexture(canvas)
  texture.generateMipmaps = false
  texture.minFilter = texture.magFilter = LinearFilter
  texture.flipY = false
  return { texture, rows, cell: (n) => places.get(n) ?? [0, 0] }
}
