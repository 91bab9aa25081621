/** Copies a line to other girders, and says for each what no longer fits before it is done. */
import { Button, Checkbox } from '@mantine/core'
import { produce } from 'immer'
import { type JSX, useMemo, useState } from 'react'
import type { Plan } from '../../plan/types'
import { edit } from '../../state/edit'
import { type CopyReport, copyLine } from '../../state/edits/line-edits'
import { app, useApp } from '../../state/store'
import { closeDialog, DialogFrame } from '../shell/DialogFrame'
import css from './rig.module.css'

export default function CopyLineDialog(): JSX.Element | null {
  const id = useApp((s) => (s.dialog?.kind === 'copy-line' ? s.dialog.line : null))
  const plan = useApp((s) => s.plan)
  const line = plan.lines.find((l) => l.id === id)
  const [chosen, setChosen] = useState<string[]>([])
  const reports = useMemo(() => (line ? tried(plan, line.id, chosen) : []), [plan, line, chosen])
  if (!line) return null
  const others = plan.girders.filter((g) => g.id !== line.girder)
  const fit = reports.filter((r) => r.line !== null)
  const copy = (): void => {
    const made: string[] = []
    edit(`copy ${line.name}`, (draft) => {
      for (const girder of chosen) {
        const done = copyLine(draft, line.id, girder).line
        if (done) made.push(done)
      }
    })
    app.setState({
      selection: made.map((lineId) => ({ kind: 'line', id: lineId })),
      tapeLine: made[0] ?? line.id,
    })
    closeDialog()
  }
  return (
    <DialogFrame title={`Copy ${line.name} to other girders`}>
      {others.map((girder) => (
        <div key={girder.id} className={css.choice}>
          <Checkbox
            label={girder.name || girder.id}
            checked={chosen.includes(girder.id)}
            onChange={(e) =>
              setChosen(
                e.currentTarget.checked ? [...chosen, girder.id] : chosen.filter((g) => g !== girder.id),
              )
            }
          />
          <Misfits report={reports.find((r) => r.girder === girder.id)} />
        </div>
      ))}
      <div className={css.actions}>
        <Button variant="filled" data-autofocus disabled={fit.length === 0} onClick={copy}>
          {fit.length > 1 ? `Copy to ${fit.length} girders` : 'Copy'}
        </Button>
        <Button onClick={closeDialog}>Do not copy</Button>
      </div>
    </DialogFrame>
  )
}

/** What would come of it, tried on a copy of the plan. */
function tried(plan: Plan, line: string, girders: string[]): CopyReport[] {
  const reports: CopyReport[] = []
  produce(plan, (draft) => {
    for (const girder of girders) reports.push(copyLine(draft, line, girder))
  })
  return reports
}

function Misfits({ report }: { report: CopyReport | undefined }): JSX.Element | null {
  if (!report) return null
  if (report.misfits.length === 0) return <p className={css.quiet}>Everything fits as it is.</p>
  return (
    <ul className={css.misfits}>
      {report.misfits.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  )
}
