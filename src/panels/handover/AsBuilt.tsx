/** Stations and tension as measured; what stands is computed again and held against the design. */
import { Button } from '@mantine/core'
import { type JSX, useState } from 'react'
import { type Comparison, comparisonLists } from '../../handover/compare'
import { asBuiltDifferences } from '../../handover/records/as-built'
import type { Line } from '../../plan/types'
import { formatQuantity } from '../../plan/units'
import { modelsForStudy } from '../../state/models/model-store'
import { addRecord } from '../../state/records'
import { app, useApp } from '../../state/store'
import css from './handover.module.css'
import { MeasuredField, measuredText } from './MeasuredField'
import { making, useMaking } from './making'
import { RecordForm } from './RecordForm'

export function AsBuiltForm({ line, close }: { line: Line; close: () => void }): JSX.Element {
  const units = useApp((s) => s.units)
  const [stations, setStations] = useState<Record<string, number>>({})
  const [tension, setTension] = useState<number | null>(null)
  const missing = line.stanchions.filter((s) => stations[s.id] === undefined).map((s) => s.id)
  const lacks =
    missing.length > 0 ? `the station of ${missing.join(', ')}` : tension === null ? 'the tension' : null
  return (
    <RecordForm
      who="Measured by"
      label="Record as built"
      lacks={lacks}
      close={close}
      keep={(signed) =>
        addRecord({ kind: 'as-built', line: line.id, stations, tension: tension ?? 0, ...signed })
      }
    >
      <p className={css.quiet}>
        As measured with the tape from the start of the girder. Type each, also where it is as planned.
      </p>
      {line.stanchions.map((s) => (
        <MeasuredField
          key={s.id}
          label={`${s.id}, planned ${measuredText(s.station, 'm', units)}`}
          unit="m"
          value={stations[s.id] ?? null}
          take={(v) => setStations({ ...stations, [s.id]: v })}
        />
      ))}
      <MeasuredField
        label={`Tension, planned ${formatQuantity(line.pretension, 'N', units)}`}
        unit="N"
        value={tension}
        take={setTension}
      />
    </RecordForm>
  )
}

/** The last measured state against the design, and its check. */
export function AsBuiltCheck({ line }: { line: Line }): JSX.Element | null {
  const plan = useApp((s) => s.plan)
  const units = useApp((s) => s.units)
  const busy = useMaking((s) => s.at !== null)
  const [checked, setChecked] = useState<{ of: typeof plan; comparison: Comparison } | null>(null)
  const found = asBuiltDifferences(plan, line)
  if (!found) return null
  const check = async (): Promise<void> => {
    const of = app.getState().plan
    const comparison = await making('studying what stands', (api, told) =>
      api.checkAsBuilt(of, modelsForStudy(), told),
    )
    if (comparison) setChecked({ of, comparison })
  }
  return (
    <>
      <h3>As built against design</h3>
      <ul className={css.log}>
        {[...found.stanchions.map((d) => ({ ...d, unit: 'm' })), { ...found.tension, unit: 'N' }].map((d) => (
          <li key={d.id}>
            {d.id}: {measuredText(d.measured, d.unit, units)}, planned{' '}
            {measuredText(d.designed, d.unit, units)}
          </li>
        ))}
      </ul>
      <Button disabled={busy} onClick={() => void check()}>
        Check what stands
      </Button>
      {checked?.of === plan ? <Differences comparison={checked.comparison} /> : null}
    </>
  )
}

function Differences({ comparison }: { comparison: Comparison }): JSX.Element {
  const plan = useApp((s) => s.plan)
  const units = useApp((s) => s.units)
  const lists = comparisonLists(comparison, plan, units)
  return (
    <div data-testid="as-built-check">
      {lists.length === 0 ? (
        <p className={css.quiet}>What stands gives the same numbers as the design.</p>
      ) : null}
      {lists.map((l) => (
        <div key={l.title}>
          <h3>{l.title}</h3>
          <ul className={css.log}>
            {l.items.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ul>
        </div>
      ))}
    </div>
  )
}
