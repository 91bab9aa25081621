/** Which part of a kind is used: one of the plan's, or another from the library. */
import type { JSX } from 'react'
import type { PartKind } from '../../plan/types'
import { app, useApp } from '../../state/store'
import { ChoiceField } from './ChoiceField'

const LIBRARY = ' library'
const NONE = ' none'

export function PartField(props: {
  label: string
  kind: PartKind
  value: string | null
  /** Offers "none", told as null. */
  none?: boolean
  onTake: (id: string | null) => void
}): JSX.Element {
  const parts = useApp((s) => s.plan.parts)
  const own = parts.filter((p) => p.kind === props.kind).map((p) => ({ value: p.id, label: p.name }))
  const choices = [
    ...(props.none ? [{ value: NONE, label: 'none' }] : []),
    ...own,
    { value: LIBRARY, label: 'From the library...' },
  ]
  const take = (value: string): void => {
    if (value === NONE) props.onTake(null)
    else if (value !== LIBRARY) props.onTake(value)
    else {
      const choose = { kind: props.kind, label: props.label, use: props.onTake }
      app.setState({ dialog: { kind: 'parts', choose } })
    }
  }
  return <ChoiceField label={props.label} value={props.value ?? NONE} choices={choices} onTake={take} />
}
