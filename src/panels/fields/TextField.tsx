import type { JSX } from 'react'
import { TypedField } from './TypedField'

/** A name or a note. Empty is refused where something must stand. */
export function TextField(props: {
  label: string
  value: string
  onTake: (value: string) => void
  must?: boolean
}): JSX.Element {
  const take = (typed: string): string | null => {
    const text = typed.trim()
    if (props.must && text === '') return 'something must stand here'
    if (text.length > 200) return 'at most 200 characters'
    props.onTake(text)
    return null
  }
  return <TypedField label={props.label} shown={props.value} take={take} wide />
}
