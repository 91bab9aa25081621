/** Girders typed or pasted line by line, with what was understood shown before it is taken. */
import { Button } from '@mantine/core'
import { type JSX, useMemo, useState } from 'react'
import { sectionShapes } from '../../plan/sections'
import { formatLength } from '../../plan/units'
import { edit } from '../../state/edit'
import { addGirder } from '../../state/edits/girder-edits'
import { app, useApp } from '../../state/store'
import { type GirderRow, readGirderTable } from '../../state/tables/girder-table'
import { ChoiceField } from '../fields/ChoiceField'
import { closeDialog, DialogFrame } from '../shell/DialogFrame'
import { onTakeKeys } from './PointsArea'
import css from './site.module.css'

type Good = Extract<GirderRow, { ok: true }>

export default function GirderTableDialog(): JSX.Element {
  const units = useApp((s) => s.units)
  const [text, setText] = useState('')
  const [shape, setShape] = useState('aashto-vi')
  const rows = useMemo(() => readGirderTable(text, units), [text, units])
  const good = rows.filter((r): r is Good => r.ok)
  return (
    <DialogFrame title="Type or paste girders">
      <p className={css.quiet}>
        One girder a line: name, start x, y, elevation, end x, y, elevation, with tabs, semicolons or commas
        between. Numbers without a unit are in {units === 'us' ? 'feet' : 'metres'}.
      </p>
      <textarea
        className={css.area}
        aria-label="Girders, one a line"
        data-autofocus
        value={text}
        onKeyDown={onTakeKeys(() => good.length > 0 && take(good, shape))}
        placeholder={units === 'us' ? 'G1; 0; 0; 46; 120; 0; 46' : 'G1; 0; 0; 14; 36.6; 0; 14'}
        onChange={(e) => setText(e.currentTarget.value)}
      />
      <ChoiceField
        label="Section"
        value={shape}
        choices={sectionShapes.map((s) => ({ value: s.id, label: s.name }))}
        onTake={setShape}
      />
      {rows.length > 0 ? <Preview rows={rows} /> : null}
      <div className={css.actions}>
        <Button variant="filled" disabled={good.length === 0} onClick={() => take(good, shape)}>
          {good.length === 1 ? 'Take 1 girder' : `Take ${good.length} girders`}
        </Button>
        <Button onClick={closeDialog}>Close</Button>
      </div>
    </DialogFrame>
  )
}

function Preview({ rows }: { rows: GirderRow[] }): JSX.Element {
  const units = useApp((s) => s.units)
  return (
    <table className={css.table}>
      <thead>
        <tr>
          <th>Girder</th>
          <th>Length</th>
          <th>Start</th>
          <th>End</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row, i) =>
          row.ok ? (
            <tr key={`${i} ${row.name}`}>
              <td>{row.name || `Girder ${i + 1}`}</td>
              <td>
                {formatLength(
                  Math.hypot(...([0, 1, 2] as const).map((k) => row.end[k] - row.start[k])),
                  units,
                )}
              </td>
              <td>{row.start.map((v) => formatLength(v, units)).join(', ')}</td>
              <td>{row.end.map((v) => formatLength(v, units)).join(', ')}</td>
            </tr>
          ) : (
            <tr key={`${i} fault`}>
              <td colSpan={4} className={css.fault}>
                Line {row.line}: {row.why}
              </td>
            </tr>
          ),
        )}
      </tbody>
    </table>
  )
}

function take(rows: Good[], shape: string): void {
  const chosen = sectionShapes.find((s) => s.id === shape)
  const made: string[] = []
  edit(rows.length === 1 ? 'add a girder' : `add ${rows.length} girders`, (plan) => {
    for (const row of rows) {
      const like = chosen ? { section: { ...chosen.section }, material: chosen.material } : {}
      const id = addGirder(plan, row.start, row.end, row.name ? { ...like, name: row.name } : like)
      if (id) made.push(id)
    }
  })
  app.setState({
    selection: made.map((id) => ({ kind: 'girder', id })),
    camera: { n: app.getState().camera.n + 1, to: 'home' },
  })
  closeDialog()
}
