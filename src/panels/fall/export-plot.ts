/** A plot as a file: SVG as it is drawn, PNG at twice the size, both on white paper. */

import { getDesk } from '../../desk/desk'
import { type PlotInput, plot } from '../../drawings/plot'
import { svgFile } from '../../drawings/svg'
import { paperTheme } from '../../drawings/theme'
import { tell } from '../../state/ask'

const SIZE = { width: 960, height: 540 }
const SHARPNESS = 2

/** Other programs may lack the window's type: they take the next one. */
const withFallbacks = (svg: string): string =>
  svg.replace('font-family="Inter"', 'font-family="Inter, DejaVu Sans, Arial, sans-serif"')

const plotSvg = (input: PlotInput): string =>
  withFallbacks(
    svgFile(plot(input, SIZE.width, SIZE.height, { ...paperTheme, textSize: 16, stroke: 1.8 }).picture),
  )

export async function exportPlot(input: PlotInput, name: string, type: 'svg' | 'png'): Promise<void> {
  const svg = plotSvg(input)
  if (type === 'svg') await exportBytes(`${name}.svg`, new TextEncoder().encode(svg), 'image/svg+xml')
  else {
    const png = await pngOf(svg)
    if (png) await exportBytes(`${name}.png`, png, 'image/png')
    else tell('The picture could not be made here; the SVG can.', 'fails')
  }
}

export async function exportBytes(name: string, bytes: Uint8Array, mime: string): Promise<void> {
  const said = await getDesk().exportFile(name, bytes, mime)
  if (said.ok) tell(`${said.value} is written.`)
  else if (said.code !== 'cancelled') tell(said.why, 'fails')
}

async function pngOf(svg: string): Promise<Uint8Array | null> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }))
  try {
    const image = new Image(SIZE.width * SHARPNESS, SIZE.height * SHARPNESS)
    image.src = address
    await image.decode()
    const canvas = new OffscreenCanvas(image.width, image.height)
    const pen = canvas.getContext('2d')
    if (!pen) return null
    pen.fillStyle = '#FFFFFF'
    pen.fillRect(0, 0, image.width, image.height)
    pen.drawImage(image, 0, 0, image.width, image.height)
    return new Uint8Array(await (await canvas.convertToBlob({ type: 'image/png' })).arrayBuffer())
  } catch {
    return null
  } finally {
    URL.revokeObjectURL(address)
  }
}
