import type { JSX } from 'react'
import type { Deck } from '../../plan/types'
import { change } from '../../state/change'
import { typePoint } from '../../state/typed/put'
import { QuantityField } from '../fields/QuantityField'
import { TextField } from '../fields/TextField'
import { CommandButtons } from './CommandButtons'
import css from './inspector.module.css'
import { put } from './put'

export function DeckFields({ deck }: { deck: Deck }): JSX.Element {
  const set = (recipe: (d: Deck) => void): string | null =>
    change('deck', deck.id, `change ${deck.name || deck.id}`, (f) => recipe(f.deck))
  const ref = { kind: 'deck', id: deck.id } as const
  return (
    <>
      <TextField label="Name" value={deck.name} must onTake={(v) => void set((d) => put(d, 'name', v))} />
      <QuantityField
        label="Elevation"
        unit="m"
        value={deck.elevation}
        onTake={(v) => set((d) => put(d, 'elevation', v))}
      />
      <div className={css.sub}>Corners</div>
      {deck.outline.map(([x, y], i) => (
        <div
          key={`${deck.id} ${i}`}
          style={{
            display: 'grid',
            gridTemplateColumns: '20px 1fr 1fr',
            gap: 4,
            alignItems: 'center',
            marginBottom: 2,
          }}
        >
          <span className={css.kind}>{i + 1}</span>
          <QuantityField
            bare
            label={`Corner ${i + 1} x`}
            unit="m"
            value={x}
            onTake={(v) => typePoint(ref, i, [v, y, deck.elevation])}
          />
          <QuantityField
            bare
            label={`Corner ${i + 1} y`}
            unit="m"
            value={y}
            onTake={(v) => typePoint(ref, i, [x, v, deck.elevation])}
          />
        </div>
      ))}
      <CommandButtons ids={['edit.duplicate', 'edit.delete']} />
    </>
  )
}
