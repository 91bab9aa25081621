/** What a person should know about the results as they stand: being computed, stopped, failed, started again. */
import type { JSX } from 'react'
import { useApp } from '../../state/store'
import { cancelStudy, studyAgain } from '../../state/study/study-client'
import css from './findings.module.css'

export function StudyNotice(): JSX.Element | null {
  const study = useApp((s) => s.study)
  const dragging = useApp((s) => s.gesture !== null)
  if (study.status === 'failed') {
    return (
      <div className={css.notice} data-kind="fails" role="alert">
        The study stopped: {study.error}. What is shown is of the plan before.
        <Link onClick={studyAgain}>Compute again</Link>
      </div>
    )
  }
  if (study.status === 'cancelled') {
    return (
      <div className={css.notice}>
        Stopped. Falls in time are not in these results.
        <Link onClick={studyAgain}>Compute them</Link>
      </div>
    )
  }
  if (study.notice) return <div className={css.notice}>{study.notice}</div>
  if (study.status !== 'running' || dragging) return null
  return (
    <div className={css.notice} role="status">
      Falls in time {study.doing}
      <span className={css.bar}>
        <i style={{ width: `${Math.round(study.progress * 100)}%` }} />
      </span>
      <Link onClick={cancelStudy}>Stop</Link>
    </div>
  )
}

const Link = ({ onClick, children }: { onClick: () => void; children: string }): JSX.Element => (
  <button type="button" className={css.link} onClick={onClick}>
    {children}
  </button>
)
