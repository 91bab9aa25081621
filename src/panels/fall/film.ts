/** Films a fall off the scene's own canvas, with its figures and the caution written into every picture. */
import { zipSync } from 'fflate'
import { formatForce } from '../../plan/units'
import { tell } from '../../state/ask'
import { type Dropped, fallStore, playhead } from '../../state/fall/fall-store'
import { filmed } from '../../state/fall/film-source'
import { now, pause, seek } from '../../state/fall/player'
import { timelineOf, valueAt } from '../../state/fall/timeline'
import { app } from '../../state/store'
import { cautionText } from '../words/Caution'
import { exportBytes } from './export-plot'

/** Of real time; and between two pictures of a series, s of the fall. */
const SPEED = 0.25
const EVERY = 0.03
/** Height of the strip under the picture, px of the film. */
const STRIP = 64

type Tell = (share: number) => void

/** The first kind of video that this machine makes, or null. */
export const videoType = (): string | null =>
  typeof MediaRecorder === 'undefined'
    ? null
    : (['video/webm;codecs=vp9', 'video/webm;codecs=vp8', 'video/webm'].find((t) =>
        MediaRecorder.isTypeSupported(t),
      ) ?? null)

const nextBeat = (): Promise<number> => new Promise((resolve) => requestAnimationFrame(resolve))

function filmCanvas(): HTMLCanvasElement | null {
  const source = filmed.draw?.()
  if (!source) return null
  const canvas = document.createElement('canvas')
  canvas.width = 2 * Math.round(source.clientWidth / 2)
  canvas.height = 2 * Math.round((source.clientHeight + STRIP) / 2)
  return canvas
}

/** One picture of the film, as the fall stands now. */
function drawPicture(canvas: HTMLCanvasElement, dropped: Dropped): void {
  const pen = canvas.getContext('2d')
  const source = filmed.draw?.()
  if (!pen || !source) return
  const style = getComputedStyle(document.documentElement)
  const color = (name: string): string => style.getPropertyValue(name).trim() || '#000000'
  pen.fillStyle = color('--paper')
  pen.fillRect(0, 0, canvas.width, canvas.height)
  pen.drawImage(source, 0, 0, canvas.width, canvas.height - STRIP)
  pen.fillStyle = color('--panel')
  pen.fillRect(0, canvas.height - STRIP, canvas.width, STRIP)
  pen.fillStyle = color('--ink')
  pen.font = '600 16px "Inter Variable", Inter, sans-serif'
  pen.fillText(figuresLine(dropped), 12, canvas.height - STRIP + 26, canvas.width - 24)
  pen.fillStyle = color('--quiet-ink')
  pen.font = '12px "Inter Variable", Inter, sans-serif'
  pen.fillText(cautionText, 12, canvas.height - 14, canvas.width - 24)
}

function figuresLine({ series, study }: Dropped): string {
  const { units } = app.getState()
  const frame = playhead.get()
  const forces = series.force.map((f) => formatForce(valueAt(f, frame), units)).join(', ')
  const { exaggerate } = fallStore.getState()
  const scale = exaggerate === 1 ? 'to scale' : `rope movement drawn ${exaggerate} times as large`
  const end = study.ends && now() >= study.ends.at - 1e-6 ? `   ${study.ends.why}` : ''
  return `${now().toFixed(2)} s   rope ${formatForce(valueAt(series.tension, frame), units)}   on the body ${forces}   ${scale}${end}`
}

/** Plays the fall once at a quarter of its speed and records it; what is cancelled leaves no file. */
export async function makeVideo(dropped: Dropped, told: Tell, stop: AbortSignal): Promise<void> {
  const line = timelineOf(dropped.study)
  const canvas = filmCanvas()
  const type = videoType()
  if (!line || !canvas || !type) {
    tell('There is no picture to film.', 'look')
    return
  }
  pause()
  const parts: Blob[] = []
  const recorder = new MediaRecorder(canvas.captureStream(30), { mimeType: type, videoBitsPerSecond: 6e6 })
  recorder.ondataavailable = (e) => parts.push(e.data)
  const done = new Promise((resolve) => recorder.addEventListener('stop', resolve))
  seek(line.from)
  drawPicture(canvas, dropped)
  recorder.start()
  const start = await nextBeat()
  for (let at = line.from; at < line.to && !stop.aborted; ) {
    at = line.from + (((await nextBeat()) - start) / 1000) * SPEED
    seek(at)
    drawPicture(canvas, dropped)
    told(Math.min(1, (at - line.from) / (line.to - line.from)))
  }
  recorder.stop()
  await done
  if (stop.aborted) return
  const bytes = new Uint8Array(await new Blob(parts, { type }).arrayBuffer())
  await exportBytes('fall.webm', bytes, 'video/webm')
}

/** The fall as numbered pictures in one file. */
export async function makePictures(dropped: Dropped, told: Tell, stop: AbortSignal): Promise<void> {
  const line = timelineOf(dropped.study)
  const canvas = filmCanvas()
  if (!line || !canvas) {
    tell('There is no picture to film.', 'look')
    return
  }
  pause()
  const files: Record<string, Uint8Array> = {}
  const count = Math.floor((line.to - line.from) / EVERY) + 2
  for (let i = 0; i < count && !stop.aborted; i++) {
    seek(line.from + i * EVERY)
    drawPicture(canvas, dropped)
    const png = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'))
    if (png) files[`fall-${String(i).padStart(3, '0')}.png`] = new Uint8Array(await png.arrayBuffer())
    told((i + 1) / count)
  }
  if (!stop.aborted) await exportBytes('fall-pictures.zip', zipSync(files, { level: 0 }), 'application/zip')
}
