/** A line of the other plan as a ghost in scene and tape. */
import { type JSX, useState } from 'react'
import { girderFrame, topPoint } from '../../geometry/girder'
import { headHeight } from '../../geometry/line'
import type { Plan, Vec3 } from '../../plan/types'
import { setGhost } from '../../state/actions'
import css from './handover.module.css'

/** The other plan's rope as a ghost in scene and tape, one line at a time. */
export function GhostChoice({ other }: { other: Plan }): JSX.Element {
  const [shown, setShown] = useState('')
  const show = (id: string): void => {
    setShown(id)
    const points = headsOf(other, id)
    setGhost(points.length > 1 ? { points, closed: false, text: 'as it was' } : null)
  }
  return (
    <select
      className={css.choose}
      aria-label="Line of the other plan shown as a ghost"
      value={shown}
      onChange={(e) => show(e.currentTarget.value)}
    >
      <option value="">No ghost of the other plan</option>
      {other.lines.map((l) => (
        <option key={l.id} value={l.id}>
          Ghost: {l.name || l.id}
        </option>
      ))}
    </select>
  )
}

function headsOf(plan: Plan, id: string): Vec3[] {
  const line = plan.lines.find((l) => l.id === id)
  const girder = plan.girders.find((g) => g.id === line?.girder)
  if (!line || !girder) return []
  const frame = girderFrame(girder)
  return line.stanchions.map((s): Vec3 => {
    const [x, y, z] = topPoint(frame, s.station, s.offset)
    return [x, y, z + (headHeight(plan, s) ?? 0)]
  })
}
