/** Plots: axes with units, lines that differ in dash too, markers, bands, limits, a cursor and a legend. */
import { LabelSpace } from './labels'
import { axes, plotFrame } from './plot/axes'
import type { Plot, PlotInput } from './plot/input'
import { legend } from './plot/legend'
import { lines } from './plot/lines'
import { bands, cursor, limits, markers } from './plot/marks'
import { svgRoot } from './svg'
import { screenTheme, type Theme } from './theme'

export type { Plot, PlotInput, PlotLine } from './plot/input'

/** A plot, width by height; `theme.textSize` decides how far away it can be read. */
export function plot(input: PlotInput, width: number, height: number, theme: Theme = screenTheme): Plot {
  const frame = plotFrame(input, width, height, theme)
  const space = new LabelSpace(width, height)
  const nodes = [
    ...axes(input, frame, theme, space),
    ...bands(input, frame, theme),
    ...limits(input, frame, theme, space),
    ...lines(input, frame, theme),
    ...cursor(input, frame, theme),
    ...markers(input, frame, theme, space),
    ...legend(input, frame, theme),
  ]
  return {
    picture: svgRoot(width, height, nodes, input.title),
    at: ([px, py]) => [frame.x.invert(px), frame.y.invert(py)],
  }
}
