/** Plays a fall by the screen's own beat: the only thing that moves is the playhead. No solver is asked. */
import { fallStore, playhead } from './fall-store'
import { frameAt, type Timeline, timeAt, timelineOf } from './timeline'

let beat = 0
let before = 0

const shown = (): Timeline | null => {
  const { dropped } = fallStore.getState()
  return dropped && timelineOf(dropped.study)
}

/** Time of the picture now, s. */
export function now(): number {
  const line = shown()
  return line ? timeAt(line.times, playhead.get()) : 0
}

/** Goes to a time; never past where the model ends. */
export function seek(time: number): void {
  const line = shown()
  if (line) playhead.set(frameAt(line.times, Math.min(line.to, Math.max(line.from, time))))
}

/** Plays on from here, from the start where it stands at the end. */
export function play(): void {
  const line = shown()
  if (!line) return
  if (now() >= line.to - 1e-9) seek(line.from)
  fallStore.setState({ playing: true })
  cancelAnimationFrame(beat)
  before = 0
  beat = requestAnimationFrame(step)
}

export function pause(): void {
  cancelAnimationFrame(beat)
  if (fallStore.getState().playing) fallStore.setState({ playing: false })
}

export const playOrPause = (): void => (fallStore.getState().playing ? pause() : play())

function step(at: number): void {
  const { playing, speed, loop } = fallStore.getState()
  const line = shown()
  if (!playing || !line) return
  // A window that was hidden must not jump: a beat counts for a tenth of a second at most.
  const passed = before === 0 ? 0 : Math.min(0.1, (at - before) / 1000)
  before = at
  const next = now() + passed * speed
  seek(next)
  if (next >= line.to) {
    if (!loop) {
      pause()
      return
    }
    seek(line.from)
  }
  beat = requestAnimationFrame(step)
}
