/** Quiet names: girders at their ends, stanchions at their heads on the line looked at, levels at a corner. */
import { girderFrame } from '../../geometry/girder'
import { headHeight } from '../../geometry/line'
import type { Girder, Stanchion } from '../../plan/types'
import { useApp } from '../../state/store'
import { useAside } from '../compare/stepped-aside'
import { useLabel } from '../labels/registry'
import { useFocusLine } from '../pictures'
import { overGirder } from '../place'

export function NameLabels() {
  const girders = useApp((s) => s.plan.girders)
  const focus = useFocusLine()
  const aside = useAside()
  const line = useApp((s) => s.plan.lines.find((l) => l.id === focus))
  const girder = girders.find((g) => g.id === line?.girder)
  return (
    <>
      {girders.map((g) => (
        <GirderName key={g.id} girder={g} />
      ))}
      {girder &&
        line?.stanchions
          .filter((s) => !aside.includes(s.id))
          .map((s) => <StanchionName key={s.id} girder={girder} stanchion={s} />)}
    </>
  )
}

function GirderName({ girder }: { girder: Girder }) {
  const at = overGirder(girder, girderFrame(girder).length, 0, -girder.section.depth / 2)
  useLabel(`name:${girder.id}`, { at, text: girder.name, tone: 'quiet', rank: 10 })
  return null
}

function StanchionName({ girder, stanchion }: { girder: Girder; stanchion: Stanchion }) {
  const height = useApp((s) => headHeight(s.plan, stanchion)) ?? 1
  const at = overGirder(girder, stanchion.station, stanchion.offset, height)
  useLabel(`name:${stanchion.id}`, { at, text: stanchion.id, tone: 'quiet', rank: 20, shift: [0, -14] })
  return null
}
