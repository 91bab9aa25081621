/** Which stations the tape shows. Left alone it follows the line; while something is dragged it stands still. */
import { useRef, useState } from 'react'
import { tapeWindow } from '../../drawings/tape'
import type { Window } from '../../drawings/view'
import type { Line } from '../../plan/types'
import { useApp } from '../../state/store'

export interface TapeZoom {
  stations: Window
  /** Zooms about a station, by default the middle. */
  by(factor: number, about?: number): void
  pan(metres: number): void
  all(): void
}

/** No closer than this, m. */
const CLOSEST = 1

export function useTapeZoom(line: Line): TapeZoom {
  const [chosen, setChosen] = useState<Window | null>(null)
  const plan = useApp((s) => s.plan)
  const still = useApp((s) => s.gesture !== null)
  const last = useRef<Window | null>(null)
  if (!last.current || !still) last.current = chosen ?? tapeWindow(plan, line)
  const stations = last.current
  return {
    stations,
    by: (factor, about = (stations.low + stations.high) / 2) => {
      const span = stations.high - stations.low
      const wanted = Math.min(400, Math.max(CLOSEST, span * factor))
      const share = (about - stations.low) / span
      setChosen({ low: about - share * wanted, high: about + (1 - share) * wanted })
    },
    pan: (metres) => setChosen({ low: stations.low + metres, high: stations.high + metres }),
    all: () => setChosen(null),
  }
}
