import { Button, Progress } from '@mantine/core'
import type { JSX } from 'react'
import { stopWork, useFind, type Work } from '../../state/find/find-client'
import css from './find.module.css'

/** The button that starts a piece of work, its progress and what stops it; and why it ended without a result. */
export function Working(props: {
  kind: Work
  start: string
  onStart: () => void
  disabled?: boolean
}): JSX.Element {
  const running = useFind((s) => s.running === props.kind)
  const other = useFind((s) => s.running !== null && s.running !== props.kind)
  const done = useFind((s) => s.done)
  const doing = useFind((s) => s.doing)
  const error = useFind((s) => s.error)
  return (
    <>
      <div className={css.row}>
        <Button variant="filled" disabled={running || props.disabled === true} onClick={props.onStart}>
          {props.start}
        </Button>
        {running ? <Button onClick={stopWork}>Stop</Button> : null}
        {other ? <p className={css.quiet}>This stops the other computation that is under way.</p> : null}
      </div>
      {running ? (
        <div role="status">
          <Progress value={100 * done} aria-label="Share done" />
          <p className={css.quiet}>{doing}</p>
        </div>
      ) : null}
      {error && !running ? (
        <p className={css.error} role="alert">
          {error}
        </p>
      ) : null}
    </>
  )
}
