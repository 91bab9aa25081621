/** A deck by its corners, typed or pasted: the same as drawing it, without a pointer. */
import { Button } from '@mantine/core'
import { type JSX, useMemo, useState } from 'react'
import type { Vec2 } from '../../plan/types'
import { formatLength } from '../../plan/units'
import { addAndSelect } from '../../state/commands/add'
import { addDeck, lowestTop } from '../../state/edits/obstacle-edits'
import { deckBetween } from '../../state/edits/outline-proposals'
import { app, useApp } from '../../state/store'
import { areaOf, outlineFault, readPoints } from '../../state/tables/point-table'
import { QuantityField } from '../fields/QuantityField'
import { closeDialog, DialogFrame } from '../shell/DialogFrame'
import { PointsArea, pointLines } from './PointsArea'
import css from './site.module.css'

export default function DeckTableDialog(): JSX.Element {
  const units = useApp((s) => s.units)
  const [text, setText] = useState(() => pointLines(deckBetween(app.getState().plan), units))
  const [elevation, setElevation] = useState(() => lowestTop(app.getState().plan))
  const { outline, faults } = useMemo(() => read(text, units), [text, units])
  const ready = faults.length === 0 && outline.length > 0
  const take = (): void => {
    if (ready && addAndSelect('deck', 'add a deck', (plan) => addDeck(plan, outline, elevation)))
      closeDialog()
  }
  return (
    <DialogFrame title="Type or paste a deck">
      <p className={css.quiet}>
        One corner a line, in order round the deck: x, y, with tabs, semicolons or commas between. Numbers
        without a unit are in {units === 'us' ? 'feet' : 'metres'}.
      </p>
      <PointsArea
        label="Corners, one a line"
        text={text}
        setText={setText}
        told={ready ? deckWords(outline, units) : null}
        faults={faults}
        take={take}
      />
      <QuantityField
        label="Elevation of its top"
        unit="m"
        value={elevation}
        least={-1e4}
        most={1e4}
        onTake={(v) => void setElevation(v)}
      />
      <div className={css.actions}>
        <Button variant="filled" disabled={!ready} onClick={take}>
          Add the deck
        </Button>
        <Button onClick={closeDialog}>Close</Button>
      </div>
    </DialogFrame>
  )
}

function read(text: string, units: 'us' | 'si'): { outline: Vec2[]; faults: string[] } {
  if (text.trim() === '') return { outline: [], faults: [] }
  const table = readPoints(text, units, 2, 2)
  const outline = table.points.map(([x = 0, y = 0]): Vec2 => [x, y])
  const fault = table.faults.length > 0 ? null : outlineFault(outline)
  return { outline, faults: fault ? [fault] : table.faults }
}

function deckWords(outline: Vec2[], units: 'us' | 'si'): string {
  const sides = outline.map(([x, y], i) => {
    const [nx, ny] = outline[(i + 1) % outline.length] ?? [x, y]
    return formatLength(Math.hypot(nx - x, ny - y), units)
  })
  const area =
    units === 'us'
      ? `${(areaOf(outline) / 0.3048 ** 2).toFixed(0)} sq ft`
      : `${areaOf(outline).toFixed(1)} m²`
  return `${outline.length} corners, ${area}, sides ${sides.slice(0, 12).join(', ')}.`
}
