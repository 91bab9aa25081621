import type { JSX } from 'react'
import { formatQuantity, parseQuantity, type UnitSystem } from '../../plan/units'
import { useApp } from '../../state/store'
import { exactLength } from '../fields/exact'
import { TypedField } from '../fields/TypedField'

/** A figure that somebody measured: empty until it is typed, for one that stands there already would be kept unmeasured. */
export function MeasuredField(props: {
  label: string
  unit: string
  value: number | null
  take: (v: number) => void
}): JSX.Element {
  const units = useApp((s) => s.units)
  const { unit, value } = props
  const take = (typed: string): string | null => {
    const read = parseQuantity(typed, unit, units)
    if (!read.ok) return read.why
    if (read.value < 0) return 'it cannot be less than nothing'
    props.take(read.value)
    return null
  }
  return (
    <TypedField
      label={props.label}
      shown={value === null ? '' : measuredText(value, unit, units)}
      take={take}
    />
  )
}

/** As a tape reads: a length over 100 ft to the sixteenth too. */
export const measuredText = (value: number | null, unit: string, units: UnitSystem): string =>
  unit === 'm' && value !== null ? exactLength(value, units) : formatQuantity(value, unit, units)
