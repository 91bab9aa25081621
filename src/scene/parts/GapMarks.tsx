/** What every near or selected obstacle leaves free, written where it is least; how deep a room enters it where it does. */
import { memo } from 'react'
import { formatLength } from '../../plan/units'
import { useApp } from '../../state/store'
import type { ObstacleResult } from '../../study/results'
import { useNotShown } from '../compare/stepped-aside'
import { Dimension } from '../labels/Dimension'

/** Gaps wider than this are told in the list alone, and in the picture of what is selected, m. */
const NEAR = 1.5

const none: ObstacleResult[] = []
const slash: [number, number, number] = [1, 0, 0]

export function GapMarks() {
  const gaps = useApp((s) => s.study.results?.obstacles ?? none)
  const hidden = useNotShown()
  const selection = useApp((s) => s.selection)
  const wanted = (o: ObstacleResult): boolean =>
    o.gap !== null && (o.gap < NEAR || selection.some((ref) => ref.id === o.id))
  return gaps
    .filter((o) => wanted(o) && !hidden.includes(o.id) && !hidden.includes(o.line ?? ''))
    .map((o) => <GapMark key={o.id} gap={o} />)
}

const GapMark = memo(function GapMark({ gap }: { gap: ObstacleResult }) {
  const units = useApp((s) => s.units)
  const name = useApp((s) => nameOf(s.plan, gap.id))
  if (gap.gap === null || !gap.at) return null
  const [x, y, z] = gap.at
  const enters = gap.gap < 0
  const size = formatLength(Math.abs(gap.gap), units)
  return (
    <Dimension
      id={`gap:${gap.id}`}
      from={[x, y, z]}
      to={[x, y, z + gap.gap]}
      text={enters ? `${size} into ${name}` : `${size} free over ${name}`}
      tone={enters ? 'fails' : 'dimension'}
      rank={enters ? 90 : 40}
      slash={slash}
      atEnd={enters}
      shift={enters ? [0, 20] : [0, 16]}
    />
  )
})

function nameOf(
  plan: {
    obstacles: readonly { id: string; name: string }[]
    girders: readonly { id: string; name: string }[]
  },
  id: string,
): string {
  return [...plan.obstacles, ...plan.girders].find((o) => o.id === id)?.name ?? id
}
