/** Where the body comes to rest, what is beneath it, and the swing of one who falls from the edge. */
import type { JSX } from 'react'
import { formatLength, formatQuantity } from '../../plan/units'
import type { Dropped } from '../../state/fall/fall-store'
import { useApp } from '../../state/store'
import type { DroppedWorker, Rest as RestState, Swing } from '../../study/drop'
import css from './fall.module.css'

export function Rest({ dropped, worker }: { dropped: Dropped; worker: DroppedWorker }): JSX.Element {
  const ends = dropped.study.ends !== null
  return (
    <>
      <h3>Where the body hangs</h3>
      {worker.rest && !ends ? (
        <Hanging rest={worker.rest} surface={worker.surface} />
      ) : (
        <p>Not known{ends ? ': the fall ends before the body comes to rest.' : '.'}</p>
      )}
      <h3>Swing from the edge</h3>
      {worker.swing ? (
        <Swinging swing={worker.swing} strikes={worker.strikes !== null} />
      ) : (
        <p className={css.quiet}>The line is over the edge here: there is no swing to speak of.</p>
      )}
    </>
  )
}

function Hanging({ rest, surface }: { rest: RestState; surface: number }): JSX.Element {
  const units = useApp((s) => s.units)
  const [first] = rest.under
  return (
    <>
      <dl className={css.facts}>
        <dt>D-ring below the edge</dt>
        <dd>{formatLength(rest.belowEdge, units)}</dd>
        <dt>Feet below the edge</dt>
        <dd>{formatLength(surface - rest.feet, units)}</dd>
        <dt>Beneath the feet</dt>
        <dd>
          {first ? `${formatLength(rest.feet - first.top, units)} to ${first.name}` : 'nothing in the plan'}
        </dd>
      </dl>
      <p className={css.quiet}>
        One body alone, hanging still, by the energy of its weight.
        {rest.unlooked.length > 0 ? ` Not looked at here: ${rest.unlooked.join('; ')}.` : ''}
      </p>
    </>
  )
}

function Swinging({ swing, strikes }: { swing: Swing; strikes: boolean }): JSX.Element {
  const units = useApp((s) => s.units)
  const speed = (v: number): string =>
    units === 'us' ? `${(v / 0.3048).toFixed(1)} ft/s` : `${v.toFixed(1)} m/s`
  return (
    <>
      <dl className={css.facts}>
        <dt>From beside the line</dt>
        <dd>{formatLength(swing.offset, units)}</dd>
        <dt>Height lost</dt>
        <dd>{formatLength(swing.drop, units)}</dd>
        <dt>Speed at the bottom</dt>
        <dd>{speed(swing.speed)}</dd>
        <dt>Radius</dt>
        <dd>{formatQuantity(swing.radius, 'm', units)}</dd>
      </dl>
      {swing.strikes && swing.strikes.speed > 0 ? (
        <p className={css.fails}>
          The feet meet {swing.strikes.what.name} at {speed(swing.strikes.speed)}, elevation{' '}
          {formatLength(swing.strikes.elevation, units)}.
        </p>
      ) : null}
      {swing.strikes && swing.strikes.speed === 0 && !strikes ? (
        <p className={css.fails}>{swing.strikes.what.name} is in the way from the start of the swing.</p>
      ) : null}
      <p className={css.quiet}>
        A pendulum without loss under the sagged line, from as far aside as one can stand.
      </p>
    </>
  )
}
