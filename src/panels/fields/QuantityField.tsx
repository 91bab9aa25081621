/** One quantity of the plan, typed and read in the window's units, kept in SI. */
import type { JSX } from 'react'
import { formatQuantity, parseQuantity } from '../../plan/units'
import { useApp } from '../../state/store'
import { exactLength } from './exact'
import { TypedField } from './TypedField'

export interface QuantityFieldProps {
  label: string
  value: number
  /** As in the findings: 'm', 'N', 'kg', 'deg', 'degC', 'ratio', 'count', 'fraction' and the rest. */
  unit: string
  /** Takes the value in SI; a word why where the plan refuses it. */
  onTake: (value: number) => string | null | undefined
  /** Least and greatest that make sense, SI; anything else is refused in words. */
  least?: number
  most?: number
  bare?: boolean
  title?: string
  /** Enter was pressed and nothing is refused. */
  onDone?: () => void
}

export function QuantityField({
  label,
  value,
  unit,
  onTake,
  least,
  most,
  bare,
  title,
  onDone,
}: QuantityFieldProps): JSX.Element {
  const system = useApp((s) => s.units)
  const show = (v: number): string =>
    unit === 'm' ? exactLength(v, system) : formatQuantity(v, unit, system)
  const take = (typed: string): string | null => {
    const read = parseQuantity(typed, unit, system)
    if (!read.ok) return read.why
    if (least !== undefined && read.value < least) return `at least ${show(least)}`
    if (most !== undefined && read.value > most) return `at most ${show(most)}`
    return onTake(read.value) ?? null
  }
  return (
    <TypedField
      label={label}
      shown={show(value)}
      take={take}
      bare={bare ?? false}
      {...(title ? { title } : {})}
      {...(onDone ? { onDone } : {})}
    />
  )
}
