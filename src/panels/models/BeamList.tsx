/** The beams of an IFC file, each to be taken over as a girder. */
import { Button } from '@mantine/core'
import { type JSX, useState } from 'react'
import { girderFromBeam, type Picked } from '../../models/girder/pick'
import { formatLength } from '../../plan/units'
import { tell } from '../../state/ask'
import { addAndSelect } from '../../state/commands/add'
import { addGirder } from '../../state/edits/girder-edits'
import { beamsInWorker } from '../../state/models/reader'
import { useApp } from '../../state/store'
import css from './models.module.css'

interface Row {
  id: number
  name: string
  picked: Picked
}

/** At most so many beams are listed; a whole bridge's bracing would be thousands. */
const MOST_ROWS = 200

export function BeamList({ bytes }: { bytes: Uint8Array }): JSX.Element {
  const [rows, setRows] = useState<Row[] | null>(null)
  const [state, setState] = useState<'idle' | 'reading' | { why: string }>('idle')
  const find = async (): Promise<void> => {
    setState('reading')
    const found = await beamsInWorker(bytes)
    if (!found.ok) {
      setState({ why: found.why })
      return
    }
    setState('idle')
    setRows(
      found.value.map(({ id, name, triangles }) => ({ id, name, picked: girderFromBeam(name, triangles) })),
    )
  }
  return (
    <>
      <h3 className={css.head}>Beams in it</h3>
      {rows ? null : (
        <Button variant="default" loading={state === 'reading'} onClick={() => void find()}>
          List its beams
        </Button>
      )}
      {typeof state === 'object' ? <p className={css.fault}>{state.why}</p> : null}
      {rows?.slice(0, MOST_ROWS).map((row) => (
        <BeamRow key={row.id} row={row} />
      ))}
      {rows && rows.length > MOST_ROWS ? (
        <p className={css.quiet}>
          {rows.length - MOST_ROWS} more are not listed: save the girders alone to a file of their own.
        </p>
      ) : null}
    </>
  )
}

function BeamRow({ row }: { row: Row }): JSX.Element {
  const units = useApp((s) => s.units)
  const { picked, name } = row
  if (!picked.ok) return <p className={css.quiet}>{picked.why}</p>
  const { girder, notes } = picked.value
  const size = Math.hypot(...girder.end.map((v, k) => v - girder.start[k]!))
  const { topWidth, depth } = girder.section
  return (
    <div className={css.beam} data-beam={name}>
      <span>
        {name}
        <br />
        <span className={css.quiet}>
          {formatLength(size, units)} long, top {formatLength(topWidth, units)} wide,{' '}
          {formatLength(depth, units)} deep
          {notes.map((note) => `; ${note}`)}
        </span>
      </span>
      <Button size="compact-xs" variant="default" onClick={() => take(girder)}>
        Make it a girder
      </Button>
    </div>
  )
}

function take(girder: (Picked & { ok: true })['value']['girder']): void {
  const { start, end, ...rest } = girder
  addAndSelect('girder', 'add a girder from a model', (plan) => addGirder(plan, start, end, rest))
  tell(`${girder.name} is now a girder. Give it its rows of loops next.`)
}
