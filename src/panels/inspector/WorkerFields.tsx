import type { JSX } from 'react'
import type { Worker } from '../../plan/types'
import { change } from '../../state/change'
import { useApp } from '../../state/store'
import { ChoiceField } from '../fields/ChoiceField'
import { PartField } from '../fields/PartField'
import { QuantityField } from '../fields/QuantityField'
import { TextField } from '../fields/TextField'
import { CommandButtons } from './CommandButtons'
import { put } from './put'

export function WorkerFields({ worker }: { worker: Worker }): JSX.Element {
  const lines = useApp((s) => s.plan.lines)
  const set = (recipe: (w: Worker) => void): string | null =>
    change('worker', worker.id, `change ${worker.name || worker.id}`, (f) => recipe(f.worker))
  return (
    <>
      <TextField label="Name" value={worker.name} must onTake={(v) => void set((w) => put(w, 'name', v))} />
      <ChoiceField
        label="On line"
        value={worker.line}
        choices={lines.map((l) => ({ value: l.id, label: l.name || l.id }))}
        onTake={(v) => void set((w) => put(w, 'line', v))}
      />
      <QuantityField
        label="Mass, dressed"
        unit="kg"
        value={worker.mass}
        least={30}
        most={250}
        onTake={(v) => set((w) => put(w, 'mass', v))}
      />
      <QuantityField
        label="D-ring above feet"
        unit="m"
        value={worker.dRingHeight}
        least={0.5}
        most={2.2}
        onTake={(v) => set((w) => put(w, 'dRingHeight', v))}
      />
      <QuantityField
        label="Harness stretch"
        unit="m"
        value={worker.harnessStretch}
        least={0}
        most={1}
        onTake={(v) => set((w) => put(w, 'harnessStretch', v))}
      />
      <PartField
        label="Connector"
        kind="connector"
        value={worker.connector}
        onTake={(v) => void set((w) => put(w, 'connector', v ?? w.connector))}
      />
      <CommandButtons ids={['edit.duplicate', 'edit.delete']} />
    </>
  )
}
