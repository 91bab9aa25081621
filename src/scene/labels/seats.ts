/** Which element shows which label, and how large it is: measured once per text, moved in every frame without React. */

import type { Label } from './registry'
import { place } from './spread'

interface Size {
  width: number
  height: number
}

interface Seat extends Size {
  label: Label
  element: HTMLElement
}

/** Sizes remembered at most: while something is dragged its texts are ever new. */
const MOST_SIZES = 2000

/** Pixel of a point of the scene, from the layer's upper left corner; null behind the camera. */
export type ToPixel = (at: Label['at']) => { x: number; y: number } | null

class Seats {
  private readonly taken = new Map<string, Seat>()
  private readonly sizes = new Map<string, Size>()
  /** Called when a label came or changed, so that a frame places it. */
  changed: () => void = () => {}

  take(label: Label, element: HTMLElement): () => void {
    const seat = { label, element, ...this.sizeOf(label, element) }
    this.taken.set(label.id, seat)
    this.changed()
    return () => {
      if (this.taken.get(label.id) === seat) this.taken.delete(label.id)
    }
  }

  /** Measuring makes the page lay itself out, so it is done once for each text, and anew when the size of type changes. */
  private sizeOf({ text, tone }: Label, element: HTMLElement): Size {
    const key = `${tone} ${window.devicePixelRatio} ${text}`
    const known = this.sizes.get(key)
    if (known) return known
    const size = { width: element.offsetWidth, height: element.offsetHeight }
    if (this.sizes.size > MOST_SIZES) this.sizes.clear()
    if (size.width > 0) this.sizes.set(key, size)
    return size
  }

  /** Puts every label where its point is seen now; what would cover a more important one is left out. */
  move(toPixel: ToPixel, size: { width: number; height: number }): void {
    const wanted = [...this.taken.values()].flatMap((seat) => {
      const at = toPixel(seat.label.at)
      const [dx, dy] = seat.label.shift ?? [0, 0]
      if (!at) return []
      const box = {
        x: Math.round(at.x + dx - seat.width / 2),
        y: Math.round(at.y + dy - seat.height / 2),
        width: seat.width,
        height: seat.height,
      }
      return [{ seat, rank: seat.label.rank, box }]
    })
    const kept = place(wanted, size)
    for (const seat of this.taken.values()) if (!kept.has(seat)) seat.element.style.visibility = 'hidden'
    for (const [seat, box] of kept) {
      seat.element.style.visibility = 'visible'
      seat.element.style.transform = `translate(${box.x}px, ${box.y}px)`
    }
  }
}

export const seats = new Seats()
