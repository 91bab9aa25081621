import type { JSX } from 'react'
import { edit } from '../../state/edit'
import { useApp } from '../../state/store'
import { ChoiceField } from '../fields/ChoiceField'
import { TextField } from '../fields/TextField'
import { CommandButtons } from './CommandButtons'
import { put } from './put'

const systems = [
  { value: 'us', label: 'ft-in and lbf first' },
  { value: 'si', label: 'm and kN first' },
]

/** The plan's own words, and the limits that everything is held against. */
export function PlanFields(): JSX.Element {
  const { title, site, notes, units } = useApp((s) => s.plan)
  const set = (key: 'site' | 'notes', value: string): void =>
    edit(`change the ${key}`, (plan) => {
      if (value) plan[key] = value
      else delete plan[key]
    })
  return (
    <>
      <TextField
        label="Title"
        value={title}
        must
        onTake={(v) => edit('change the title', (p) => put(p, 'title', v))}
      />
      <TextField label="Site" value={site ?? ''} onTake={(v) => set('site', v)} />
      <TextField label="Notes" value={notes ?? ''} onTake={(v) => set('notes', v)} />
      <ChoiceField
        label="On paper"
        value={units}
        choices={systems}
        onTake={(v) => edit('change the units on paper', (p) => put(p, 'units', v === 'us' ? 'us' : 'si'))}
      />
      <CommandButtons ids={['rig.basis', 'rig.parts']} />
    </>
  )
}
