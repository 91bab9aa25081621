/** A status as a shape: a ring holds, a triangle asks to look, a filled square with a bar fails, a dotted ring is not known. */
import type { JSX } from 'react'
import type { FindingStatus } from '../../study/results'
import { statusWord } from './status'

const colour: Record<FindingStatus, string> = {
  pass: 'var(--holds)',
  warn: 'var(--look-here)',
  fail: 'var(--fails)',
  unknown: 'var(--quiet-ink)',
}

const shape: Record<FindingStatus, JSX.Element> = {
  pass: <circle cx="7" cy="7" r="4.6" fill="none" strokeWidth="2" />,
  warn: <path d="M7 1.8 12.6 12H1.4Z" fill="none" strokeWidth="1.8" strokeLinejoin="round" />,
  fail: (
    <>
      <rect x="1.5" y="1.5" width="11" height="11" rx="1.5" fill="currentColor" strokeWidth="0" />
      <path d="M4 7h6" stroke="var(--panel)" strokeWidth="2" />
    </>
  ),
  unknown: <circle cx="7" cy="7" r="4.8" fill="none" strokeWidth="1.8" strokeDasharray="1.6 2.2" />,
}

interface Props {
  status: FindingStatus
  size?: number
  /** Without its colour: nothing has this status. */
  quiet?: boolean
}

export function StatusMark({ status, size = 14, quiet = false }: Props): JSX.Element {
  return (
    <svg
      width={size}
      height={size}
      viewBox="0 0 14 14"
      stroke="currentColor"
      role="img"
      aria-label={statusWord[status]}
      style={{ flex: 'none', color: quiet ? 'var(--quiet-ink)' : colour[status] }}
    >
      {shape[status]}
    </svg>
  )
}

export const statusColour = colour
