/** The stack: the clearance as a bar of its summands, beside what is there below the walking surface. */
import { formatLength } from '../plan/units'
import { type DrawingWords, englishDrawingWords } from './drawing'
import { hatchLines } from './picture'
import { el, pathData, type SvgElement, svgRoot } from './svg'
import { fitText } from './text-size'
import { screenTheme, type Theme } from './theme'

export interface StackInput {
  freeFall: number
  lineDrop: number
  connectorExtension: number
  harnessStretch: number
  marginBelow: number
  /** What the fall in time adds, m; 0 where it adds nothing. */
  excess: number
  /** From the walking surface down to what is there, its own margin taken off, m; null: nothing under it. */
  there: { name: string; distance: number } | null
  units: 'us' | 'si'
  words?: DrawingWords
}

export interface StackPart {
  name: string
  length: number
  /** Marks that tell parts apart without colour. */
  hatch: boolean
}

/** The summands from the walking surface down; their sum is the clearance plus the excess in time. */
export function stackParts(input: StackInput): StackPart[] {
  const words = input.words ?? englishDrawingWords
  const parts = [
    { name: words.freeFall, length: input.freeFall, hatch: false },
    { name: words.lineDrop, length: input.lineDrop, hatch: true },
    { name: words.connector, length: input.connectorExtension, hatch: false },
    { name: words.harness, length: input.harnessStretch, hatch: true },
    { name: words.margin, length: input.marginBelow, hatch: false },
    { name: words.timeExcess, length: input.excess, hatch: true },
  ]
  return parts.filter((p) => p.length > 0)
}

interface Bar {
  x: number
  width: number
  scale: number
  top: number
}

/** The picture, width by height. */
export function stack(
  input: StackInput,
  width: number,
  height: number,
  theme: Theme = screenTheme,
): SvgElement {
  const words = input.words ?? englishDrawingWords
  const parts = stackParts(input)
  const needed = parts.reduce((sum, p) => sum + p.length, 0)
  const size = theme.textSize
  const top = size * 2
  const tallest = Math.max(needed, input.there?.distance ?? 0, 0.1)
  const scale = (height - top - size * 2) / tallest
  const bar: Bar = { x: 4, width: Math.min(44, width * 0.2), scale, top }
  const there: Bar = { ...bar, x: bar.x + bar.width + 6 }
  const labels = there.x + there.width + 10
  const nodes = [
    ...partShapes(parts, bar, labels, width, input.units, theme),
    ...thereShapes(input, there, needed, theme),
    caption(4, size, `${words.needed} ${formatLength(needed, input.units)}`, theme),
    thereCaption(input, needed, width, height, theme),
  ]
  return svgRoot(width, height, nodes, `${words.needed} ${formatLength(needed, input.units)}`)
}

const caption = (x: number, y: number, text: string, theme: Theme): SvgElement =>
  el('text', { x, y, 'font-size': theme.textSize, 'font-weight': 'bold', fill: theme.inks.ink }, text)

function thereCaption(
  input: StackInput,
  needed: number,
  width: number,
  height: number,
  theme: Theme,
): SvgElement {
  const words = input.words ?? englishDrawingWords
  const { there } = input
  const text = there
    ? `${words.there} ${formatLength(there.distance, input.units)}: ${there.name}`
    : words.none
  const short = there !== null && there.distance < needed
  const fill = short ? theme.inks.fails : theme.inks.quiet
  const y = height - theme.textSize * 0.5
  return el('text', { x: 4, y, 'font-size': theme.textSize, fill }, fitText(text, theme.textSize, width - 8))
}

function partShapes(
  parts: StackPart[],
  bar: Bar,
  labels: number,
  width: number,
  units: 'us' | 'si',
  theme: Theme,
): SvgElement[] {
  const places = labelHeights(parts, bar, theme.textSize * 1.35)
  let y = bar.top
  return parts.flatMap((part, i) => {
    const h = part.length * bar.scale
    const shapes = segment(bar, y, h, part.hatch, theme)
    const middle = y + h / 2
    y += h
    const text = `${part.name} ${formatLength(part.length, units)}`
    const at = places[i]! + theme.textSize * 0.35
    const guide = pathData([
      [bar.x + bar.width, middle],
      [bar.x + bar.width + 4, middle],
      [labels - 3, places[i]!],
    ])
    return [
      ...shapes,
      el('path', { d: guide, fill: 'none', stroke: theme.inks.line, 'stroke-width': 0.7 }),
      el(
        'text',
        { x: labels, y: at, 'font-size': theme.textSize, fill: theme.inks.ink },
        fitText(text, theme.textSize, width - labels),
      ),
    ]
  })
}

function segment(bar: Bar, y: number, h: number, hatch: boolean, theme: Theme): SvgElement[] {
  const box = { x: bar.x, y, width: bar.width, height: h, fill: theme.inks.room, 'fill-opacity': 0.14 }
  const frame = el('rect', { ...box, stroke: theme.inks.ink, 'stroke-width': theme.stroke * 0.5 })
  if (!hatch) return [frame]
  const corners: [number, number][] = [
    [bar.x, y],
    [bar.x + bar.width, y],
    [bar.x + bar.width, y + h],
    [bar.x, y + h],
  ]
  const d = hatchLines(corners, 6)
    .map((l) => pathData(l))
    .join('')
  return d ? [frame, el('path', { d, fill: 'none', stroke: theme.inks.room, 'stroke-width': 0.7 })] : [frame]
}

/** Heights of the labels, pushed apart so that none lies on another. */
export function labelHeights(parts: StackPart[], bar: Bar, gap: number): number[] {
  let y = bar.top
  const wanted = parts.map((p) => {
    const middle = y + (p.length * bar.scale) / 2
    y += p.length * bar.scale
    return middle
  })
  const placed: number[] = []
  for (const w of wanted) placed.push(Math.max(w, (placed.at(-1) ?? -Infinity) + gap))
  const over = Math.max(0, (placed.at(-1) ?? 0) - y)
  return placed.map((p, i) => Math.max(p - over, bar.top + gap * (i + 0.5)))
}

function thereShapes(input: StackInput, bar: Bar, needed: number, theme: Theme): SvgElement[] {
  if (!input.there) return []
  const h = Math.max(0, input.there.distance) * bar.scale
  const short = input.there.distance < needed
  const stroke = short ? theme.inks.fails : theme.inks.ink
  const box = {
    x: bar.x,
    y: bar.top,
    width: bar.width,
    height: h,
    fill: 'none',
    stroke,
    'stroke-width': theme.stroke,
  }
  const floor = pathData([
    [bar.x - bar.width - 6, bar.top + h],
    [bar.x + bar.width, bar.top + h],
  ])
  return [el('rect', box), el('path', { d: floor, fill: 'none', stroke, 'stroke-width': theme.stroke * 1.6 })]
}
