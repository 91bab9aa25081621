/** The plots of a fall in time: tension, arrest force, height and energy, each computed by the solver at every picture. */

import type { FallSeries } from '../study/drop/series'
import type { PlotInput, PlotLine } from './plot'
import { convertForPlot, type PlotUnits } from './plot-units'

export interface FallPlotInput {
  series: FallSeries
  /** Names of those who fall, in the order of the series. */
  names: string[]
  /** When each body is lowest, s. */
  lowest: { at: number; worker: number }[]
  /** Seconds that are drawn. */
  from: number
  to: number
  /** Greatest force that one body may feel, N. */
  maxArrestForce: number
  /** What the rope holds at its terminations, N. */
  ropeStrength: number
  units: 'us' | 'si'
}

export type FallPlotKind = 'tension' | 'force' | 'height' | 'energy'

const times = { label: 'time from taut', unit: 's' }

/** From the strength on the limit is drawn only where the curve comes near it: else the curve would lie flat. */
const NEAR = 0.4

const rows = (input: FallPlotInput, values: Float64Array, scale: number): [number, number][] =>
  Array.from(input.series.times, (t, f): [number, number] => [t, values[f]! * scale]).filter(
    ([t]) => t >= input.from - 1e-9 && t <= input.to + 1e-9,
  )

const perBody = (input: FallPlotInput, values: Float64Array[], scale: number): PlotLine[] =>
  values.map((v, w) => ({ name: input.names[w] ?? '', points: rows(input, v, scale) }))

function tension(input: FallPlotInput, u: PlotUnits): PlotInput {
  const points = rows(input, input.series.tension, u.force.per)
  const most = Math.max(...points.map((p) => p[1]))
  const strength = input.ropeStrength * u.force.per
  return {
    title: 'Tension in the rope',
    x: { ...times, range: { low: input.from, high: input.to } },
    y: { label: 'greatest tension', unit: u.force.name },
    lines: [{ name: '', points }],
    limits:
      most > NEAR * strength ? [{ value: strength, text: 'rope at its terminations', ink: 'fails' }] : [],
  }
}

function force(input: FallPlotInput, u: PlotUnits): PlotInput {
  return {
    title: 'Arrest force',
    x: { ...times, range: { low: input.from, high: input.to } },
    y: { label: 'force on the body', unit: u.force.name },
    lines: perBody(input, input.series.force, u.force.per),
    limits: [{ value: input.maxArrestForce * u.force.per, text: 'greatest allowed', ink: 'fails' }],
  }
}

function nearest({ series }: FallPlotInput, worker: number, at: number): number {
  const frame = series.times.findIndex((t) => t >= at - 1e-9)
  return series.height[worker]?.[frame] ?? Number.NaN
}

function height(input: FallPlotInput, u: PlotUnits): PlotInput {
  return {
    title: 'Height of the D-ring',
    x: { ...times, range: { low: input.from, high: input.to } },
    y: { label: 'height', unit: u.length.name },
    lines: perBody(input, input.series.height, u.length.per),
    limits: [{ value: 0, text: 'walking surface', ink: 'quiet' }],
    markers: input.lowest.map(({ at, worker }) => ({
      at: [at, nearest(input, worker, at) * u.length.per],
      text: 'lowest',
    })),
  }
}

function energy(input: FallPlotInput, u: PlotUnits): PlotInput {
  const { kinetic, potential, elastic, lost } = input.series.energies
  const scale = u.energy.per
  return {
    title: 'Energy',
    x: { ...times, range: { low: input.from, high: input.to } },
    y: { label: 'energy', unit: u.energy.name },
    lines: [
      { name: 'motion', points: rows(input, kinetic, scale) },
      { name: 'height', points: rows(input, potential, scale) },
      { name: 'stretch', points: rows(input, elastic, scale) },
      { name: 'lost', points: rows(input, lost, scale) },
    ],
  }
}

const makers = { tension, force, height, energy }

/** One of the four. */
export function fallPlot(kind: FallPlotKind, input: FallPlotInput): PlotInput {
  return makers[kind](input, convertForPlot(input.units))
}
