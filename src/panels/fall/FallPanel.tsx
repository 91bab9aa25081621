/** Fall: who falls, where and how; what it comes to by both methods; the room it needs; where the body hangs. */
import { type JSX, useEffect } from 'react'
import { chooseLine, pruneFall } from '../../state/fall/drop-actions'
import { useFall } from '../../state/fall/fall-store'
import { useApp } from '../../state/store'
import { Caution } from '../words/Caution'
import { Corners } from './Corners'
import { Figures } from './Figures'
import css from './fall.module.css'
import { Rest } from './Rest'
import { RunState } from './RunState'
import { WhoFalls } from './WhoFalls'

export default function FallPanel(): JSX.Element {
  const lines = useApp((s) => s.plan.lines.length)
  useLineInHand()
  return (
    <div className={css.panel}>
      <div className={css.body} data-testid="fall">
        <h2>Fall</h2>
        {lines === 0 ? <p>There is no line in the plan yet, so nobody can fall on one.</p> : <Parts />}
      </div>
      <Caution />
    </div>
  )
}

function Parts(): JSX.Element {
  const dropped = useFall((s) => s.dropped)
  const active = useFall((s) => s.active)
  const shown = dropped?.study.workers[Math.min(active, dropped.study.workers.length - 1)]
  return (
    <>
      <WhoFalls />
      <RunState />
      {dropped && shown ? (
        <>
          <Figures dropped={dropped} worker={shown} />
          <Rest dropped={dropped} worker={shown} />
        </>
      ) : null}
      <Corners />
    </>
  )
}

/** The line on the tape is the one that is fallen on. */
function useLineInHand(): void {
  const plan = useApp((s) => s.plan)
  const line = useApp((s) => s.tapeLine ?? s.plan.lines[0]?.id ?? null)
  useEffect(() => pruneFall(plan), [plan])
  useEffect(() => {
    if (line) chooseLine(line)
  }, [line])
}
