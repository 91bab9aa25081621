/** QR codes as vectors. */
import qrcode from 'qrcode-generator'
import { el, pathData, type SvgElement, svgRoot } from '../../drawings/svg'

/** Longest text that is put into one code; beyond it the modules grow too small for a wet tag. */
const MOST = 220

/** A QR code of a text in UTF-8, `size` points wide with its quiet zone. */
export function qrPicture(text: string, size: number): SvgElement {
  const code = qrcode(0, 'M')
  code.addData(utf8(text.slice(0, MOST)), 'Byte')
  code.make()
  const count = code.getModuleCount()
  const quiet = 4
  const unit = size / (count + 2 * quiet)
  const squares: string[] = []
  for (let row = 0; row < count; row++) {
    for (let column = 0; column < count; column++) {
      if (code.isDark(row, column)) squares.push(square((column + quiet) * unit, (row + quiet) * unit, unit))
    }
  }
  return svgRoot(size, size, [el('path', { d: squares.join(''), fill: '#000000' })])
}

const square = (x: number, y: number, u: number): string =>
  pathData(
    [
      [x, y],
      [x + u, y],
      [x + u, y + u],
      [x, y + u],
    ],
    true,
  )

/** The generator takes one byte a character. */
const utf8 = (text: string): string =>
  Array.from(new TextEncoder().encode(text), (byte) => String.fromCharCode(byte)).join('')
