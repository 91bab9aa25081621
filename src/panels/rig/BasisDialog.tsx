/** The limits and margins that everything is held against, each with its source; changed ones make the basis the plan's own. */
import { Button, TextInput } from '@mantine/core'
import type { JSX } from 'react'
import { basisPreset } from '../../plan/presets'
import type { Basis } from '../../plan/types'
import { edit } from '../../state/edit'
import { basisFigures, setLimit } from '../../state/edits/basis-edits'
import { useApp } from '../../state/store'
import { QuantityField } from '../fields/QuantityField'
import { closeDialog, DialogFrame } from '../shell/DialogFrame'
import css from './rig.module.css'

const presets = [
  ['us', 'United States'],
  ['ca', 'Canada'],
  ['eu', 'Europe'],
] as const

const nameWord: Record<Basis['name'], string> = {
  us: 'United States',
  ca: 'Canada',
  eu: 'Europe',
  custom: 'your own',
}

export default function BasisDialog(): JSX.Element {
  const basis = useApp((s) => s.plan.basis)
  return (
    <DialogFrame title={`Limits and margins: ${nameWord[basis.name]}`} size="xl">
      <div className={css.actions} style={{ margin: '0 0 12px' }}>
        {presets.map(([name, label]) => (
          <Button
            key={name}
            variant={basis.name === name ? 'filled' : 'default'}
            onClick={() =>
              edit(
                `take the limits of ${label}`,
                (plan) => void Object.assign(plan, { basis: basisPreset(name) }),
              )
            }
          >
            {label}
          </Button>
        ))}
      </div>
      <div className={css.limits}>
        <span className={css.head}>Limit</span>
        <span className={css.head}>Figure</span>
        <span className={css.head}>Where it comes from</span>
        {basisFigures(basis).map((figure) => (
          <Limit key={figure.key} figure={figure} source={basis.sources[figure.of] ?? ''} />
        ))}
      </div>
      <div className={css.actions}>
        <Button variant="filled" onClick={closeDialog}>
          Done
        </Button>
      </div>
    </DialogFrame>
  )
}

function Limit({
  figure,
  source,
}: {
  figure: ReturnType<typeof basisFigures>[number]
  source: string
}): JSX.Element {
  const change = (value: number): null => {
    edit(`change the limit: ${figure.label.toLowerCase()}`, (plan) => setLimit(plan.basis, figure.key, value))
    return null
  }
  return (
    <>
      <span>{figure.label}</span>
      <QuantityField
        bare
        label={figure.label}
        unit={figure.unit}
        value={figure.value}
        least={figure.least}
        most={figure.most}
        onTake={change}
      />
      <TextInput
        aria-label={`Source of ${figure.label}`}
        key={source}
        defaultValue={source}
        onBlur={(e) => {
          const text = e.currentTarget.value.trim()
          if (text && text !== source)
            edit('name the source of a limit', (plan) => {
              plan.basis.sources[figure.of] = text
            })
        }}
      />
    </>
  )
}
