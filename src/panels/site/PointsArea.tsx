/** Points to type or paste, one a line, with what was understood or why not beside them. */
import type { JSX, KeyboardEvent } from 'react'
import type { UnitSystem } from '../../plan/units'
import { exactLength } from '../fields/exact'
import css from './site.module.css'

export function PointsArea(props: {
  label: string
  text: string
  setText: (text: string) => void
  /** What was understood; null while there is nothing to tell. */
  told: string | null
  faults: readonly string[]
  /** Control and Enter. */
  take: () => void
}): JSX.Element {
  return (
    <>
      <textarea
        className={css.area}
        aria-label={props.label}
        data-autofocus
        value={props.text}
        onFocus={(e) => e.currentTarget.select()}
        onKeyDown={onTakeKeys(props.take)}
        onChange={(e) => props.setText(e.currentTarget.value)}
      />
      {props.faults.slice(0, 6).map((fault) => (
        <p key={fault} className={css.fault} role="alert">
          {fault}
        </p>
      ))}
      {props.faults.length === 0 && props.told ? <p className={css.quiet}>{props.told}</p> : null}
    </>
  )
}

/** Points as they are typed: in the window's units, one a line. */
export const pointLines = (points: readonly (readonly number[])[], units: UnitSystem): string =>
  points.map((p) => p.map((v) => exactLength(v, units)).join('; ')).join('\n')

/** Enter begins a new line in a text; with Control it takes what is there. */
export const onTakeKeys =
  (take: () => unknown) =>
  (e: KeyboardEvent): void => {
    if (e.key !== 'Enter' || !(e.ctrlKey || e.metaKey)) return
    e.preventDefault()
    take()
  }
