import type { JSX } from 'react'
import type { Girder, LoopRow } from '../../plan/types'
import { change } from '../../state/change'
import { QuantityField, type QuantityFieldProps } from '../fields/QuantityField'
import { CommandButtons } from './CommandButtons'
import { put } from './put'

type Field = Pick<QuantityFieldProps, 'label' | 'unit' | 'least' | 'most'> & {
  key: Exclude<keyof LoopRow, 'id'>
}

const fields: Field[] = [
  { key: 'first', label: 'First loop at', unit: 'm', least: 0, most: 500 },
  { key: 'spacing', label: 'Spacing', unit: 'm', least: 0.02, most: 10 },
  { key: 'count', label: 'Number of loops', unit: 'count', least: 1, most: 5000 },
  { key: 'offset', label: 'Left of the middle', unit: 'm', least: -5, most: 5 },
  { key: 'barDiameter', label: 'Bar diameter', unit: 'm', least: 0.003, most: 0.06 },
  { key: 'yieldStress', label: 'Yield stress', unit: 'Pa', least: 1e8, most: 2e9 },
  { key: 'height', label: 'Height above top', unit: 'm', least: 0.01, most: 1 },
]

export function LoopRowFields({ row, girder }: { row: LoopRow; girder: Girder }): JSX.Element {
  return (
    <>
      {fields.map(({ key, ...field }) => (
        <QuantityField
          key={key}
          {...field}
          value={row[key]}
          onTake={(v) => {
            return change('loop-row', row.id, `change the loops of ${girder.name}`, (f) => put(f.row, key, v))
          }}
        />
      ))}
      <CommandButtons ids={['edit.delete']} />
    </>
  )
}
