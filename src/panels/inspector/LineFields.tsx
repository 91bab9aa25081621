import type { JSX } from 'react'
import type { Line } from '../../plan/types'
import { formatQuantity } from '../../plan/units'
import { change } from '../../state/change'
import { useApp } from '../../state/store'
import { greatestArrest } from '../../study/greatest-arrest'
import { ChoiceField } from '../fields/ChoiceField'
import { PartField } from '../fields/PartField'
import { QuantityField } from '../fields/QuantityField'
import { TextField } from '../fields/TextField'
import { CommandButtons } from './CommandButtons'
import { HardwareFields } from './HardwareFields'
import css from './inspector.module.css'
import { put } from './put'

const grips = [
  { value: 'sliding', label: 'runs free at stanchions' },
  { value: 'held', label: 'is held at stanchions' },
]
const ends = [
  { value: 'start', label: 'at the start' },
  { value: 'end', label: 'at the end' },
]

export function LineFields({ line }: { line: Line }): JSX.Element {
  const set = (recipe: (l: Line) => void, what = 'change'): string | null =>
    change('line', line.id, `${what} ${line.name || line.id}`, (f) => recipe(f.line))
  return (
    <>
      <TextField
        label="Name"
        value={line.name}
        must
        onTake={(v) => void set((l) => put(l, 'name', v), 'rename')}
      />
      <LineFigures id={line.id} />
      <PartField
        label="Wire rope"
        kind="wire-rope"
        value={line.wireRope}
        onTake={(v) => void set((l) => put(l, 'wireRope', v ?? l.wireRope))}
      />
      <ChoiceField
        label="The rope"
        value={line.grip ?? 'sliding'}
        choices={grips}
        onTake={(v) => void set((l) => put(l, 'grip', v === 'held' ? 'held' : 'sliding'))}
      />
      <PartField
        label="Absorber"
        kind="line-absorber"
        none
        value={line.absorber}
        onTake={(v) => void set((l) => put(l, 'absorber', v))}
      />
      <ChoiceField
        label="It stands"
        value={line.absorberAt}
        choices={ends}
        onTake={(v) => void set((l) => put(l, 'absorberAt', v === 'end' ? 'end' : 'start'))}
      />
      <QuantityField
        label="Pretension"
        unit="N"
        value={line.pretension}
        least={0}
        most={1e5}
        onTake={(v) => set((l) => put(l, 'pretension', v))}
      />
      <QuantityField
        label="Give or take"
        unit="fraction"
        value={line.pretensionTolerance}
        least={0}
        most={0.9}
        onTake={(v) => set((l) => put(l, 'pretensionTolerance', v))}
      />
      <QuantityField
        label="Installed at"
        unit="degC"
        value={line.installTemperature}
        least={-60}
        most={70}
        onTake={(v) => set((l) => put(l, 'installTemperature', v))}
      />
      <Service line={line} set={set} />
      <QuantityField
        label="Workers at once"
        unit="count"
        value={line.workersAtOnce}
        least={1}
        most={20}
        onTake={(v) => set((l) => put(l, 'workersAtOnce', v))}
      />
      <HardwareFields line={line} set={set} />
      <CommandButtons ids={['rig.addStanchion', 'rig.addWorker', 'rig.copyLine', 'edit.delete']} />
    </>
  )
}

function Service({
  line,
  set,
}: {
  line: Line
  set: (recipe: (l: Line) => void) => string | null
}): JSX.Element {
  const { low, high } = line.serviceTemperature
  return (
    <>
      <QuantityField
        label="Coldest in service"
        unit="degC"
        value={low}
        least={-60}
        most={high}
        onTake={(v) => set((l) => put(l.serviceTemperature, 'low', v))}
      />
      <QuantityField
        label="Warmest in service"
        unit="degC"
        value={high}
        least={low}
        most={90}
        onTake={(v) => set((l) => put(l.serviceTemperature, 'high', v))}
      />
    </>
  )
}

/** The line's governing figures, beside what is typed. */
function LineFigures({ id }: { id: string }): JSX.Element | null {
  const all = useApp((s) => s.study.results)
  const units = useApp((s) => s.units)
  const results = all?.lines.find((l) => l.id === id)
  if (!all || !results) return null
  const { governing, installed } = results
  const figures: [string, number | null, string, string][] = [
    ['Greatest tension', governing.tension, 'N', 'tension'],
    ['Arrest force', greatestArrest(all, results), 'N', 'arrest'],
    ['Clearance needed', governing.clearance, 'm', 'clearance'],
    ['Rope strength over tension', governing.wireRopeSafetyFactor, 'ratio', 'factor'],
    ['Installed sag, most', most(installed.sag), 'm', 'sag'],
  ]
  return (
    <dl className={css.figures} data-testid="line-figures">
      {figures.map(([label, value, unit, key]) => (
        <div key={key} style={{ display: 'contents' }}>
          <dt>{label}</dt>
          <dd data-figure={key}>{formatQuantity(value, unit, units)}</dd>
        </div>
      ))}
    </dl>
  )
}

const most = (values: (number | null)[]): number | null =>
  values.some((v) => v === null) || values.length === 0 ? null : Math.max(...(values as number[]))
