/** How deep the room of the line looked at reaches under its girder's top, drawn where it is deepest. */
import { useMemo } from 'react'
import { girderFrame } from '../../geometry/girder'
import { formatLength } from '../../plan/units'
import { useApp } from '../../state/store'
import { useAside } from '../compare/stepped-aside'
import { Dimension } from '../labels/Dimension'
import { useFocusLine, useLineGirder } from '../pictures'
import { overGirder } from '../place'
import { deepest } from '../shapes/floor'

export function RoomDimension() {
  const focus = useFocusLine()
  const units = useApp((s) => s.units)
  const line = useApp((s) => s.plan.lines.find((l) => l.id === focus))
  const girder = useLineGirder(focus)
  const floor = useApp((s) => s.study.results?.lines.find((l) => l.id === focus)?.floor)
  const low = useMemo(() => (floor ? deepest(floor) : null), [floor])
  const aside = useAside()
  if (!line || !girder || !low || aside.includes(line.id)) return null
  const { along } = girderFrame(girder)
  const offset = line.stanchions[0]?.offset ?? 0
  return (
    <Dimension
      id={`room-depth:${line.id}`}
      from={overGirder(girder, low.station, offset, 0)}
      to={overGirder(girder, low.station, offset, -low.depth)}
      text={`${formatLength(low.depth, units)} needed`}
      slash={along}
      aside={-1}
      atEnd
      shift={[0, 14]}
      rank={60}
    />
  )
}
