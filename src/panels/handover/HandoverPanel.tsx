/** Hand over: papers, records, rescue plan, and what changed against another plan. */
import { type JSX, useState } from 'react'
import { useApp } from '../../state/store'
import { Caution } from '../words/Caution'
import { Compare } from './Compare'
import css from './handover.module.css'
import { MakingBar } from './MakingBar'
import { Papers } from './Papers'
import { Records } from './Records'
import { Rescue } from './Rescue'

const tabs = { Papers, Records, Rescue, Compare }
type Tab = keyof typeof tabs

export default function HandoverPanel(): JSX.Element {
  const [tab, setTab] = useState<Tab>('Papers')
  const lines = useApp((s) => s.plan.lines.length)
  const Body = tabs[tab]
  return (
    <div className={css.panel}>
      <div className={css.tabs} role="tablist" aria-label="Hand over">
        {(Object.keys(tabs) as Tab[]).map((t) => (
          <button
            key={t}
            type="button"
            role="tab"
            id={`handover-${t}`}
            aria-selected={t === tab}
            aria-controls="handover-body"
            className={css.tab}
            onClick={() => setTab(t)}
          >
            {t}
          </button>
        ))}
      </div>
      <MakingBar />
      <div className={css.body} id="handover-body" role="tabpanel" aria-labelledby={`handover-${tab}`}>
        {lines === 0 ? <p>There is no line in the plan yet, so there is nothing to hand over.</p> : <Body />}
      </div>
      <Caution />
    </div>
  )
}
