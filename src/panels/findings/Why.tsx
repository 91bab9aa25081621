/** Why the chosen finding is as it is: its words, the sum with the values put in, where it comes from, notes. */
import { Button, CloseButton } from '@mantine/core'
import { type JSX, useEffect, useState } from 'react'
import { formatQuantity } from '../../plan/units'
import type { Explained } from '../../solver/explain'
import { chooseFinding } from '../../state/actions'
import { findingOf } from '../../state/findings'
import { app, useApp } from '../../state/store'
import { whyFinding } from '../../state/study/study-client'
import { lineOfFinding, mendable } from '../../study/mend/changes'
import type { Finding } from '../../study/results'
import css from './findings.module.css'
import { Notes } from './Notes'
import { WhyTree } from './WhyTree'
import { ruleWord } from './words'

export function Why(): JSX.Element | null {
  const finding = useApp((s) => findingOf(s.study.results, s.finding))
  const units = useApp((s) => s.units)
  const tree = useTree(finding)
  if (!finding) return null
  const value = finding.value === null ? '' : ` ${formatQuantity(finding.value, finding.unit, units)}`
  return (
    <section className={css.why} aria-label="Why" data-testid="why">
      <div className={css.whyHead}>
        <h3>
          Why: {ruleWord[finding.rule] ?? finding.rule}
          {value}
        </h3>
        <CloseButton size="sm" aria-label="Close" onClick={() => chooseFinding(null)} />
      </div>
      <p className={css.text}>{finding.text}</p>
      {tree ? <WhyTree tree={tree} units={units} /> : null}
      <p className={css.source}>Limit from: {finding.source}</p>
      <MendButton finding={finding} />
      <RescueButton finding={finding} />
      <Notes finding={finding} />
    </section>
  )
}

/** Small changes are looked for where a finding fails and a line can be changed. */
function MendButton({ finding }: { finding: Finding }): JSX.Element | null {
  const line = useApp((s) => lineOfFinding(s.plan, finding)?.id)
  if (finding.status !== 'fail' || line === undefined || !mendable(finding.rule)) return null
  const { rule, subject } = finding
  return (
    <Button
      size="compact-sm"
      onClick={() =>
        app.setState({ dialog: { kind: 'find', line, tab: 'mend', finding: { rule, subject } } })
      }
    >
      Look for small changes that mend it
    </Button>
  )
}

/** What is missing is written down where it is told. */
function RescueButton({ finding }: { finding: Finding }): JSX.Element | null {
  const line = useApp((s) => lineOfFinding(s.plan, finding)?.id)
  if (finding.rule !== 'rescue-plan' || finding.status === 'pass' || line === undefined) return null
  return (
    <Button size="compact-sm" onClick={() => app.setState({ dialog: { kind: 'rescue', line } })}>
      Record the rescue plan
    </Button>
  )
}

/** The sum comes from the study's worker, each time the finding was computed anew. */
function useTree(finding: Finding | null): Explained | null {
  const [tree, setTree] = useState<{ of: Finding; tree: Explained | null } | null>(null)
  useEffect(() => {
    if (!finding) return
    let wanted = true
    void whyFinding(finding).then((found) => {
      if (wanted) setTree({ of: finding, tree: found })
    })
    return () => {
      wanted = false
    }
  }, [finding])
  const same = tree && finding && tree.of.rule === finding.rule && tree.of.subject === finding.subject
  return same ? tree.tree : null
}
