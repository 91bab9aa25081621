/** What stands on a plot beside its lines: bands, limits, the cursor and markers. */
import type { LabelSpace } from '../labels'
import { el, pathData, type SvgElement } from '../svg'
import { textWidth } from '../text-size'
import type { Theme } from '../theme'
import type { Point } from '../view'
import { type Frame, type PlotInput, place } from './input'

export function bands(input: PlotInput, f: Frame, theme: Theme): SvgElement[] {
  return (input.bands ?? []).map((b) => {
    const over = b.points.map((p) => place(f, [p.x, p.high]))
    const under = b.points.map((p) => place(f, [p.x, p.low])).reverse()
    const fill = theme.inks[b.ink ?? 'accent']
    return el('path', { d: pathData([...over, ...under], true), fill, 'fill-opacity': 0.16 })
  })
}

export function limits(input: PlotInput, f: Frame, theme: Theme, space: LabelSpace): SvgElement[] {
  return (input.limits ?? []).flatMap((l) => {
    const y = Number(f.y(l.value))
    const stroke = theme.inks[l.ink ?? 'fails']
    const size = theme.textSize
    const request = {
      at: [f.right - 4, y - size * 0.4] as Point,
      text: l.text,
      size,
      bold: false,
      dodge: 'down' as const,
    }
    const placed = space.place({ ...request, anchor: 'end', optional: false })
    const [x, at] = placed?.at ?? request.at
    return [
      el('path', {
        d: pathData([
          [f.left, y],
          [f.right, y],
        ]),
        stroke,
        'stroke-width': theme.stroke,
        'stroke-dasharray': '8 4',
      }),
      el('text', { x, y: at, 'font-size': size, 'text-anchor': 'end', fill: stroke }, l.text),
    ]
  })
}

export function cursor(input: PlotInput, f: Frame, theme: Theme): SvgElement[] {
  if (input.cursor === undefined || !Number.isFinite(input.cursor)) return []
  const x = Number(f.x(input.cursor))
  return [
    el('path', {
      d: pathData([
        [x, f.top],
        [x, f.bottom],
      ]),
      stroke: theme.inks.accent,
      'stroke-width': theme.stroke,
    }),
  ]
}

export function markers(input: PlotInput, f: Frame, theme: Theme, space: LabelSpace): SvgElement[] {
  const size = theme.textSize
  return (input.markers ?? []).flatMap((m) => {
    const [cx, cy] = place(f, m.at)
    const stroke = theme.inks[m.ink ?? 'accent']
    const dot = el('circle', {
      cx,
      cy,
      r: theme.stroke * 2.4,
      fill: theme.inks.panel,
      stroke,
      'stroke-width': theme.stroke,
      'data-ref': m.ref,
    })
    if (!m.text) return [dot]
    // Beside the dot rather than over it: the cursor goes through the one that follows the hand.
    const right = f.right - textWidth(m.text, size, true)
    const at: Point = [Math.min(cx + size * 0.7, right), cy - size * (cx + size * 0.7 <= right ? 0.5 : 0.9)]
    const request = {
      at,
      text: m.text,
      size,
      bold: true,
      anchor: 'start' as const,
      dodge: 'up' as const,
      optional: false,
    }
    const [x, y] = space.place(request)?.at ?? at
    const look = { x, y, 'font-size': size, 'font-weight': 'bold', fill: stroke }
    return [dot, el('text', look, m.text)]
  })
}
