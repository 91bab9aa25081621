/** What the rope does to the heads of the stanchions, from a solved line (mechanics section 6). */
import type { UnloadedLine } from './installed'
import type { LoadedChain } from './loaded'

/** The rope's pull on the two heads of one span: H along the span, and downwards at its first and at its far head, N. */
export interface SpanPull {
  H: number
  startDown: number
  endDown: number
}

/** Pull on one head, N: along the girder (positive towards greater stations), across (positive left), down. */
export interface HeadPull {
  along: number
  across: number
  down: number
  /** Resultant of the horizontal components, N. */
  horizontal: number
}

/** Pulls of every span of the unloaded line. */
export function unloadedPulls(line: UnloadedLine): SpanPull[] {
  return line.spans.map((s) => ({ H: s.H, startDown: s.V, endDown: line.set.weight * s.L - s.V }))
}

/**
 * Pulls of every span with a load on one of them. Where the rope is held the other spans hang as they do without a
 * load; where it slides they are part of the loaded chain.
 */
export function loadedPulls(line: UnloadedLine, span: number, state: LoadedChain): SpanPull[] {
  const w = line.set.weight
  return unloadedPulls(line).map((unloaded, i) => {
    if (i === span) return { H: state.H, startDown: state.at.V, endDown: -state.at.second.E }
    const other = line.grip === 'sliding' ? state.others[i] : undefined
    return other ? { H: other.H, startDown: other.V, endDown: w * other.L - other.V } : unloaded
  })
}

/** Unit direction of a span in plan, in the girder's own directions: [along, left]. */
export type SpanDirection = [number, number]

/** Pulls on every head, from the pulls of the spans on either side of it. */
export function headPulls(spans: SpanPull[], directions: SpanDirection[]): HeadPull[] {
  const heads: HeadPull[] = []
  for (let j = 0; j <= spans.length; j++) {
    const before = spans[j - 1]
    const after = spans[j]
    const [ax, ay] = directions[j] ?? [0, 0]
    const [bx, by] = directions[j - 1] ?? [0, 0]
    const along = (after?.H ?? 0) * ax - (before?.H ?? 0) * bx
    const across = (after?.H ?? 0) * ay - (before?.H ?? 0) * by
    const down = (after?.startDown ?? 0) + (before?.endDown ?? 0)
    heads.push({ along, across, down, horizontal: Math.hypot(along, across) })
  }
  return heads
}
