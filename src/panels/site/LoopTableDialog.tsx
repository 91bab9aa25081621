/** Loop rows pasted or read from a CSV file, with a preview before they replace the girder's rows. */
import { Button } from '@mantine/core'
import { type JSX, useMemo, useState } from 'react'
import { getDesk } from '../../desk/desk'
import type { Girder } from '../../plan/types'
import { formatLength } from '../../plan/units'
import { tell } from '../../state/ask'
import { tryEdit } from '../../state/change'
import { replaceLoops } from '../../state/edits/loop-edits'
import { useApp } from '../../state/store'
import { type LoopTable, readLoopTable } from '../../state/tables/loop-table'
import { closeDialog, DialogFrame } from '../shell/DialogFrame'
import css from './site.module.css'

export default function LoopTableDialog(): JSX.Element | null {
  const id = useApp((s) => (s.dialog?.kind === 'loop-table' ? s.dialog.girder : null))
  const girder = useApp((s) => s.plan.girders.find((g) => g.id === id))
  const units = useApp((s) => s.units)
  const [text, setText] = useState('')
  const [why, setWhy] = useState<string | null>(null)
  const table = useMemo(() => readLoopTable(text, units), [text, units])
  if (!girder) return null
  const read = async (): Promise<void> => {
    const picked = await getDesk().pickFile('table')
    if (picked.ok) setText(new TextDecoder().decode(picked.value.bytes))
    else if (picked.code !== 'cancelled') tell(picked.why, 'fails')
  }
  return (
    <DialogFrame title={`Loops of ${girder.name}`}>
      <p className={css.quiet}>
        Either one row a line (first loop, spacing, number of loops, left of the middle), or one measured
        station a line from the girder’s start (and after it, how far left of the middle). Numbers without a
        unit are in {units === 'us' ? 'feet' : 'metres'}.
      </p>
      <textarea
        className={css.area}
        aria-label="Loops, one row or station a line"
        data-autofocus
        value={text}
        onChange={(e) => setText(e.currentTarget.value)}
      />
      <Preview table={table} />
      {why ? <p className={css.fault}>It was not taken: {why}.</p> : null}
      <div className={css.actions}>
        <Button
          variant="filled"
          disabled={table.rows.length === 0}
          onClick={() => setWhy(take(girder, table))}
        >
          Replace its loops
        </Button>
        <Button onClick={() => void read()}>Read a CSV file</Button>
        <Button onClick={closeDialog}>Close</Button>
      </div>
    </DialogFrame>
  )
}

function Preview({ table }: { table: LoopTable }): JSX.Element | null {
  const units = useApp((s) => s.units)
  if (!table.told) return null
  return (
    <>
      <p className={css.quiet}>{table.told}</p>
      <table className={css.table}>
        <tbody>
          {table.rows.slice(0, 12).map((row, i) => (
            <tr key={`${i} ${row.first}`}>
              <td>from {formatLength(row.first, units)}</td>
              <td>every {formatLength(row.spacing, units)}</td>
              <td>{row.count} loops</td>
              <td>{formatLength(row.offset, units)} left of the middle</td>
            </tr>
          ))}
        </tbody>
      </table>
      {table.faults.slice(0, 6).map((fault) => (
        <p key={fault} className={css.fault}>
          {fault}
        </p>
      ))}
    </>
  )
}

/** The word why where the plan would be none that could be opened again. */
function take(girder: Girder, table: LoopTable): string | null {
  let lost: string[] = []
  const refused = tryEdit(`replace the loops of ${girder.name}`, (plan) => {
    lost = replaceLoops(plan, girder.id, table.rows)
  })
  if (refused) return refused
  if (lost.length > 0)
    tell(`${lost.join(', ')} found no loops there any more and went to the nearest ones.`, 'look')
  closeDialog()
  return null
}
