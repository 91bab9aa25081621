/** Lines of a plot, told apart by dash as well as by ink. */
import { el, pathData, type SvgElement } from '../svg'
import type { Ink, Theme } from '../theme'
import type { Point } from '../view'
import { type Frame, type PlotInput, type PlotLine, place } from './input'

/** Lines break where a value is not known. */
export function lines(input: PlotInput, f: Frame, theme: Theme): SvgElement[] {
  return input.lines.map((l, i) => {
    const d = pieces(l.points)
      .map((p) => pathData(p.map((q) => place(f, q))))
      .join('')
    const style = lineStyle(l, i, theme)
    return el('path', { d: d || 'M0 0', fill: 'none', ...style })
  })
}

function pieces(points: Point[]): Point[][] {
  const found: Point[][] = [[]]
  for (const p of points) {
    if (Number.isFinite(p[0]) && Number.isFinite(p[1])) found.at(-1)!.push(p)
    else if (found.at(-1)!.length > 0) found.push([])
  }
  return found.filter((p) => p.length > 1)
}

const dashes: ([number, number] | undefined)[] = [undefined, [6, 3], [2, 2], [9, 3]]
const inkOrder: Ink[] = ['ink', 'accent', 'fails', 'ghost']

export function lineStyle(l: PlotLine, i: number, theme: Theme) {
  const dash = l.dash ?? dashes[i % dashes.length]
  return {
    stroke: theme.inks[l.ink ?? inkOrder[i % inkOrder.length]!],
    'stroke-width': theme.stroke * (l.width ?? 1.2),
    'stroke-dasharray': dash?.map((n) => n * theme.stroke).join(' '),
    'stroke-linejoin': 'round',
  }
}
