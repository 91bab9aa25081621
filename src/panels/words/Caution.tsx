import type { JSX } from 'react'
import css from './caution.module.css'

/** Stands wherever a result does. */
export const cautionText =
  'For planning. Design, installation and use under a qualified person; the parts’ own documentation and local codes govern.'

export const Caution = (): JSX.Element => <p className={css.caution}>{cautionText}</p>
