/** Under the picture of a fall: its plots and what plays it. */
import type { JSX } from 'react'
import { useFall } from '../../state/fall/fall-store'
import css from './fall.module.css'
import { Plots } from './Plots'
import { Transport } from './Transport'

export default function FallStage(): JSX.Element {
  const dropped = useFall((s) => s.dropped)
  return (
    <section className={css.stage} aria-label="Playing the fall">
      {dropped ? (
        <>
          <Plots dropped={dropped} />
          <Transport dropped={dropped} />
        </>
      ) : (
        <p className={css.start}>Click on the rope or on the tape where somebody falls, or press Drop.</p>
      )}
    </section>
  )
}
