/** A dimension line with drafting slashes at its ends and its figure beside it. */
import { useMemo } from 'react'
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
  /** Direction of the slashes, unit. */
  slash: Vec3
  /** Pixels by which the figure stands off the middle of the line. */
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
  shift,
}: DimensionProps) {
  const palette = usePalette()
  const color = tone === 'fails' ? palette.fails : palette.accent
  const points = useMemo(() => [...from, ...to, ...cut(from, slash), ...cut(to, slash)], [from, to, slash])
  const at: Vec3 = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (from[2] + to[2]) / 2]
  useLabel(id, { at, text, tone, rank, ...(shift ? { shift } : {}) })
  return <Ink name={id} points={points} color={color} width={1.25} order={7} through />
}

const cut = (p: Vec3, [dx, dy, dz]: Vec3): number[] => [
  p[0] - dx * SLASH,
  p[1] - dy * SLASH,
  p[2] - dz * SLASH - SLASH / 2,
  p[0] + dx * SLASH,
  p[1] + dy * SLASH,
  p[2] + dz * SLASH + SLASH / 2,
]
