/** Every line that differs, as the other plan has it: dashed and hollow beside the solid things of the open plan. */
import { memo, useMemo } from 'react'
import { lerp } from '../../geometry/vec'
import type { Vec3 } from '../../plan/types'
import { formatLength } from '../../plan/units'
import { beside, type OtherPlan } from '../../state/compare/beside'
import { useApp } from '../../state/store'
import { Ink } from '../Ink'
import { useNote } from '../labels/notes'
import { useLabel } from '../labels/registry'
import { usePalette } from '../palette'
import { useFocusLine } from '../pictures'
import { chain } from '../shapes/solid'
import { headsOf, type Moved, movedStanchions } from './moved'
import { stanchionWires, strapWires, undersideWires } from './wires'

const NOTES = {
  before:
    'Before only: dashed and hollow; the rooms of the lines that changed are not shown, their undersides are dashed',
  after: null,
  both: 'Dashed and hollow: before. Solid: the open plan',
}

export function OtherLines() {
  const { other, show } = beside()
  useNote('beside', other ? NOTES[show] : null)
  if (!other || show === 'after') return null
  return other.lines.map((id) => <OtherLine key={id} id={id} other={other} alone={show === 'before'} />)
}

interface OtherLineProps {
  id: string
  other: OtherPlan
  /** The open plan's line is not shown. */
  alone: boolean
}

function OtherLine({ id, other, alone }: OtherLineProps) {
  const plan = useApp((s) => s.plan)
  const moved = useMemo(() => movedStanchions(other.plan, plan, id), [other, plan, id])
  const heads = useMemo(() => headsOf(other.plan, id), [other, id])
  const posts = useMemo(() => {
    const among = new Set(moved.filter((m) => m.from).map((m) => m.stanchion))
    return stanchionWires(other.plan, id, alone ? undefined : among)
  }, [other, id, alone, moved])
  const straps = useMemo(() => strapWires(other.plan, id, alone ? undefined : plan), [other, id, alone, plan])
  return (
    <>
      <OtherRopes id={id} other={other} />
      <Wires name={`before:${id}:stanchions`} points={posts} dash={0.07} width={1.5} />
      <Wires name={`before:${id}:tie-backs`} points={straps} dash={0.12} width={1.5} />
      {!alone && moved.map((m) => <Move key={m.stanchion} move={m} />)}
      {alone && [...heads].map(([s, at]) => <HeadName key={s} stanchion={s} at={at} />)}
    </>
  )
}

/** Installed rope and underside of the room; on the line looked at the sagged rope too. */
const OtherRopes = memo(function OtherRopes({ id, other }: { id: string; other: OtherPlan }) {
  const focus = useFocusLine()
  const detail = other.details.find((d) => d.id === id)
  const floor = other.results.lines.find((l) => l.id === id)?.floor
  const installed = useMemo(() => chain(detail?.installedRope ?? []), [detail])
  const sagged = useMemo(() => chain(detail?.saggedRope ?? []), [detail])
  const under = useMemo(() => undersideWires(other.plan, id, floor ?? []), [other, id, floor])
  return (
    <>
      <Wires name={`before:${id}:rope`} points={installed} dash={0.25} width={2} />
      <Wires name={`before:${id}:sagged`} points={focus === id ? sagged : none} dash={0.25} width={2} />
      <Wires name={`before:${id}:underside`} points={under} dash={0.4} width={1.5} />
    </>
  )
})

const none: number[] = []

function Wires(props: { name: string; points: readonly number[]; dash: number; width: number }) {
  const { compare } = usePalette()
  return <Ink {...props} color={compare} order={8} through />
}

function HeadName({ stanchion, at }: { stanchion: string; at: Vec3 }) {
  useLabel(`before:${stanchion}`, { at, text: stanchion, tone: 'compare', rank: 20, shift: [0, -16] })
  return null
}

/** A thin join from a head to where it is now, and how far that is. */
function Move({ move }: { move: Moved }) {
  const units = useApp((s) => s.units)
  const { compare } = usePalette()
  const { stanchion, how, from, to, by } = move
  const points = useMemo(() => (from && to ? [...from, ...to] : none), [from, to])
  const at: Vec3 = from && to ? lerp(from, to, 0.5) : (from ?? to)!
  const text = how === 'moved' ? `${stanchion} moved ${formatLength(by, units)}` : `${stanchion} ${how}`
  useLabel(`moved:${stanchion}`, { at, text, tone: 'compare', rank: 85, shift: [0, -18] })
  return <Ink name={`moved:${stanchion}`} points={points} color={compare} width={1} through order={8} />
}
