/** A dimension line with drafting slashes at its ends and its figure beside it. */
import { useMemo } from 'react'
import { add, lerp, scale } from '../../geometry/vec'
import type { Vec3 } from '../../plan/types'
import { Ink } from '../Ink'
import { usePalette } from '../palette'
import { type Tone, useLabel } from './registry'

interface DimensionProps {
  id: string
  from: Vec3
  to: Vec3
  text: string
  tone?: Tone
  rank?: number
  /** Direction of the slashes, unit; the line is drawn `aside` in it, with extension lines back to the points, m. */
  slash: Vec3
  aside?: number
  /** The figure stands at the end instead of the middle. */
  atEnd?: boolean
  /** Pixels by which the figure stands off its place. */
  shift?: [number, number]
}

/** Half-length of a slash, m. */
const SLASH = 0.09

export function Dimension({
  id,
  from,
  to,
  text,
  tone = 'dimension',
  rank = 50,
  slash,
  aside = 0,
  atEnd = false,
  shift,
}: DimensionProps) {
  const palette = usePalette()
  const color = tone === 'fails' ? palette.fails : palette.accent
  const points = useMemo(() => lines(from, to, slash, aside), [from, to, slash, aside])
  const at = beside(lerp(from, to, atEnd ? 1 : 0.5), slash, aside)
  useLabel(id, { at, text, tone, rank, ...(shift ? { shift } : {}) })
  return <Ink name={id} points={points} color={color} width={1.25} order={7} through />
}

const beside = (p: Vec3, way: Vec3, by: number): Vec3 => add(p, scale(way, by))

function lines(from: Vec3, to: Vec3, slash: Vec3, aside: number): number[] {
  const [a, b] = [beside(from, slash, aside), beside(to, slash, aside)]
  const extension = (p: Vec3): number[] => [...p, ...beside(p, slash, aside + Math.sign(aside) * SLASH * 2)]
  return [
    ...a,
    ...b,
    ...cut(a, slash),
    ...cut(b, slash),
    ...(aside === 0 ? [] : [...extension(from), ...extension(to)]),
  ]
}

const cut = (p: Vec3, [dx, dy, dz]: Vec3): number[] => [
  p[0] - dx * SLASH,
  p[1] - dy * SLASH,
  p[2] - dz * SLASH - SLASH / 2,
  p[0] + dx * SLASH,
  p[1] + dy * SLASH,
  p[2] + dz * SLASH + SLASH / 2,
]
