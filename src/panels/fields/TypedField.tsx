/**
 * A field that is typed into and takes effect on Enter or when it is left. What can't be read is refused in place: the
 * word why stands under it, and the old value stays in the plan. Escape brings the old value back.
 */
import { type JSX, type KeyboardEvent, useId, useState } from 'react'
import css from './field.module.css'

export interface TypedFieldProps {
  label: string
  /** The value as it reads now. */
  shown: string
  /** Takes what was typed; a word why where it is refused, else null. */
  take: (typed: string) => string | null
  /** Without its visible label, for tables. */
  bare?: boolean
  readOnly?: boolean
  /** Words: a longer field. */
  wide?: boolean
  title?: string
  /** Enter was pressed and nothing is refused. */
  onDone?: () => void
}

export function TypedField({
  label,
  shown,
  take,
  bare,
  readOnly,
  wide,
  title,
  onDone,
}: TypedFieldProps): JSX.Element {
  const id = useId()
  const [typed, setTyped] = useState<string | null>(null)
  const [why, setWhy] = useState<string | null>(null)

  const done = (): boolean => {
    if (typed === null || typed === shown) {
      reset()
      return true
    }
    const refused = take(typed)
    setWhy(refused)
    if (refused === null) setTyped(null)
    return refused === null
  }
  const reset = (): void => {
    setTyped(null)
    setWhy(null)
  }
  const onKeyDown = (e: KeyboardEvent<HTMLInputElement>): void => {
    if (e.key === 'Enter' && done() && onDone) {
      // The key must not go on to press what the focus goes back to.
      e.preventDefault()
      onDone()
    }
    if (e.key === 'Escape' && typed !== null) {
      e.stopPropagation()
      e.nativeEvent.stopImmediatePropagation()
      reset()
    }
  }
  return (
    <div className={bare ? css.bare : wide ? css.wide : css.row} title={title}>
      {bare ? null : (
        <label className={css.label} htmlFor={id}>
          {label}
        </label>
      )}
      <input
        id={id}
        className={css.input}
        aria-label={bare ? label : undefined}
        aria-invalid={why !== null}
        aria-describedby={why ? `${id}-why` : undefined}
        value={typed ?? shown}
        readOnly={readOnly}
        onFocus={(e) => e.currentTarget.select()}
        onChange={(e) => setTyped(e.currentTarget.value)}
        onBlur={done}
        onKeyDown={onKeyDown}
        autoComplete="off"
        spellCheck={false}
      />
      {why ? (
        <span id={`${id}-why`} className={css.why} role="alert">
          {why}; {shown || 'nothing'} is kept
        </span>
      ) : null}
    </div>
  )
}
