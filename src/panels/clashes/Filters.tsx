import { TextInput } from '@mantine/core'
import type { JSX } from 'react'
import { formatLength } from '../../plan/units'
import { type Clash, filtered, NEAR, type Near } from '../../state/clashes/clash-list'
import { clashStore, setFilter } from '../../state/clashes/clash-store'
import { useApp } from '../../state/store'
import { ChoiceField } from '../fields/ChoiceField'
import css from './clashes.module.css'

/** Which gaps are listed: by line, by how near, by name. */
export function Filters({ all }: { all: Clash[] }): JSX.Element {
  const lines = useApp((s) => s.plan.lines)
  const units = useApp((s) => s.units)
  const filter = clashStore((s) => s.filter)
  const clashes = all.filter((c) => c.state === 'clash').length
  const unknown = all.filter((c) => c.state === 'unknown').length
  const near = [
    { value: 'all', label: 'all of them' },
    { value: 'near', label: `clashes and nearer than ${formatLength(NEAR, units)}` },
    { value: 'clashes', label: 'clashes only' },
  ]
  const told = [
    `${clashes} ${clashes === 1 ? 'clash' : 'clashes'}`,
    ...(unknown > 0 ? [`${unknown} not known`] : []),
    `${filtered(all, filter).length} of ${all.length} listed`,
  ]
  return (
    <>
      <p className={css.quiet}>{told.join(', ')}</p>
      <div className={css.filters}>
        <ChoiceField
          label="Line"
          value={filter.line ?? 'all'}
          choices={[
            { value: 'all', label: 'every line' },
            ...lines.map((l) => ({ value: l.id, label: l.name || l.id })),
          ]}
          onTake={(v) => setFilter({ line: v === 'all' ? null : v })}
        />
        <ChoiceField
          label="How near"
          value={filter.near}
          choices={near}
          onTake={(v) => setFilter({ near: v as Near })}
        />
        <TextInput
          size="xs"
          aria-label="Part of the name"
          placeholder="Part of the name"
          value={filter.text}
          onChange={(e) => setFilter({ text: e.currentTarget.value })}
        />
      </div>
    </>
  )
}
