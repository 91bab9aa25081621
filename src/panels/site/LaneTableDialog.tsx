/** A road or rail lane by the points of its middle, typed or pasted, with its width and the height to keep free. */
import { Button } from '@mantine/core'
import { type JSX, useMemo, useState } from 'react'
import type { Vec3 } from '../../plan/types'
import { formatLength } from '../../plan/units'
import { addAndSelect } from '../../state/commands/add'
import { addLane, groundAt } from '../../state/edits/obstacle-edits'
import { laneUnder } from '../../state/edits/outline-proposals'
import { app, useApp } from '../../state/store'
import { readPoints } from '../../state/tables/point-table'
import { QuantityField } from '../fields/QuantityField'
import { closeDialog, DialogFrame } from '../shell/DialogFrame'
import { PointsArea, pointLines } from './PointsArea'
import css from './site.module.css'

export default function LaneTableDialog(): JSX.Element {
  const units = useApp((s) => s.units)
  const [text, setText] = useState(() => pointLines(laneUnder(app.getState().plan), units))
  const [width, setWidth] = useState(3.6)
  const [height, setHeight] = useState(4.5)
  const { path, faults } = useMemo(() => read(text, units), [text, units])
  const ready = faults.length === 0 && path.length > 0
  const take = (): void => {
    if (ready && addAndSelect('obstacle', 'add a lane', (plan) => addLane(plan, path, width, height)))
      closeDialog()
  }
  return (
    <DialogFrame title="Type or paste a road or rail lane">
      <p className={css.quiet}>
        The middle of the lane, one point a line: x, y, elevation, with tabs, semicolons or commas between.
        Without an elevation it lies on the ground. Numbers without a unit are in{' '}
        {units === 'us' ? 'feet' : 'metres'}.
      </p>
      <PointsArea
        label="Points of its middle, one a line"
        text={text}
        setText={setText}
        told={ready ? `${path.length} points, ${formatLength(lengthOf(path), units)} long.` : null}
        faults={faults}
        take={take}
      />
      <QuantityField
        label="Width"
        unit="m"
        value={width}
        least={0.1}
        most={200}
        onTake={(v) => void setWidth(v)}
      />
      <QuantityField
        label="Clear height"
        unit="m"
        value={height}
        least={0}
        most={50}
        onTake={(v) => void setHeight(v)}
      />
      <div className={css.actions}>
        <Button variant="filled" disabled={!ready} onClick={take}>
          Add the lane
        </Button>
        <Button onClick={closeDialog}>Close</Button>
      </div>
    </DialogFrame>
  )
}

function read(text: string, units: 'us' | 'si'): { path: Vec3[]; faults: string[] } {
  if (text.trim() === '') return { path: [], faults: [] }
  const { points, faults } = readPoints(text, units, 2, 3)
  const ground = groundAt(app.getState().plan)
  const path = points.map(([x = 0, y = 0, z]): Vec3 => [x, y, z ?? ground])
  if (faults.length > 0) return { path, faults }
  return { path, faults: lengthOf(path) < 0.1 ? ['A lane needs two points that lie apart.'] : [] }
}

const lengthOf = (path: Vec3[]): number =>
  path.slice(1).reduce((sum, p, i) => {
    const [x, y, z] = path[i] ?? p
    return sum + Math.hypot(p[0] - x, p[1] - y, p[2] - z)
  }, 0)
