/** The legend above a plot, in as many rows as it needs. */
import { el, pathData, type SvgElement } from '../svg'
import { textWidth } from '../text-size'
import type { Theme } from '../theme'
import type { Frame, PlotInput } from './input'
import { lineStyle } from './lines'

interface LegendEntry {
  name: string
  style: ReturnType<typeof lineStyle>
  x: number
}

/** Legend entries in as many rows as they need; none for a single line without a name. */
export function legendRows(input: PlotInput, width: number, size: number): { index: number; x: number }[][] {
  const rows: { index: number; x: number }[][] = []
  let x = Infinity
  input.lines.forEach((l, index) => {
    if (!l.name) return
    const needed = size * 3 + textWidth(l.name, size) + size
    if (x + needed > width) {
      rows.push([])
      x = 0
    }
    rows.at(-1)!.push({ index, x })
    x += needed
  })
  return rows
}

export function legend(input: PlotInput, f: Frame, theme: Theme): SvgElement[] {
  const size = theme.textSize
  const width = f.right - f.left
  return legendRows(input, width, size).flatMap((row, r) => {
    const y = size * (2.2 + r * 1.5)
    return row.flatMap(({ index, x }) =>
      legendEntry(
        {
          name: input.lines[index]!.name,
          style: lineStyle(input.lines[index]!, index, theme),
          x: f.left + x,
        },
        y,
        theme,
      ),
    )
  })
}

function legendEntry(entry: LegendEntry, y: number, theme: Theme): SvgElement[] {
  const size = theme.textSize
  const d = pathData([
    [entry.x, y],
    [entry.x + size * 2.2, y],
  ])
  return [
    el('path', { d, fill: 'none', ...entry.style }),
    el(
      'text',
      { x: entry.x + size * 2.7, y: y + size * 0.35, 'font-size': size, fill: theme.inks.ink },
      entry.name,
    ),
  ]
}
