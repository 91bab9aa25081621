/** What the scene shows of a comparison: the lines that changed as they were, as they are, or both. */
import { SegmentedControl } from '@mantine/core'
import type { JSX } from 'react'
import { type BesideShown, beside } from '../../state/compare/beside'
import css from './handover.module.css'

export function BesideChoice(): JSX.Element | null {
  const { other, show } = beside()
  if (!other) return null
  if (other.lines.length === 0) return <p className={css.quiet}>No line is drawn differently.</p>
  return (
    <div className={css.row}>
      <span>Changed lines in the scene</span>
      <SegmentedControl
        size="xs"
        aria-label="Changed lines in the scene"
        value={show}
        data={[
          { value: 'before', label: 'Before' },
          { value: 'after', label: 'After' },
          { value: 'both', label: 'Both' },
        ]}
        onChange={(v) => beside.setState({ show: v as BesideShown })}
      />
    </div>
  )
}
