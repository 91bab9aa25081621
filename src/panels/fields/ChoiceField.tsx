import { type JSX, useId } from 'react'
import css from './field.module.css'

export interface Choice {
  value: string
  label: string
}

/** One of a few. A plain select: it works with every keyboard and reader. */
export function ChoiceField(props: {
  label: string
  value: string
  choices: readonly Choice[]
  onTake: (value: string) => void
  bare?: boolean
  /** Its choices have long names. */
  wide?: boolean
}): JSX.Element {
  const id = useId()
  return (
    <div className={props.bare ? css.bare : props.wide ? css.wide : css.row}>
      {props.bare ? null : (
        <label className={css.label} htmlFor={id}>
          {props.label}
        </label>
      )}
      <select
        id={id}
        className={css.input}
        aria-label={props.bare ? props.label : undefined}
        value={props.value}
        onChange={(e) => props.onTake(e.currentTarget.value)}
      >
        {props.choices.map((c) => (
          <option key={c.value} value={c.value}>
            {c.label}
          </option>
        ))}
      </select>
    </div>
  )
}
