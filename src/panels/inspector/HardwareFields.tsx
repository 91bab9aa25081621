import { CloseButton } from '@mantine/core'
import type { JSX } from 'react'
import type { Line } from '../../plan/types'
import { app, useApp } from '../../state/store'
import css from './inspector.module.css'

/** What is in series with the rope: shackles, tensioner, clamps, each once for every time it is there. */
export function HardwareFields({
  line,
  set,
}: {
  line: Line
  set: (recipe: (l: Line) => void) => string | null
}): JSX.Element {
  const parts = useApp((s) => s.plan.parts)
  const name = (id: string): string => parts.find((p) => p.id === id)?.name ?? id
  const add = (): void => {
    const use = (id: string): void => void set((l) => void l.hardware.push(id))
    app.setState({
      dialog: { kind: 'parts', choose: { kind: 'hardware', label: 'Hardware in the line', use } },
    })
  }
  return (
    <>
      <div className={css.sub}>Hardware in the line</div>
      {line.hardware.map((id, i) => (
        <div
          key={`${id} ${i}`}
          style={{ display: 'flex', justifyContent: 'space-between', alignItems: 'center' }}
        >
          <span>{name(id)}</span>
          <CloseButton
            size="xs"
            aria-label={`Take ${name(id)} out`}
            onClick={() => void set((l) => void l.hardware.splice(i, 1))}
          />
        </div>
      ))}
      <button type="button" className={css.link} onClick={add}>
        Add hardware
      </button>
    </>
  )
}
