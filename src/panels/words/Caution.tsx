import type { JSX } from 'react'

/** Stands wherever a result does. */
export const cautionText =
  'For planning. Design, installation and use under a qualified person; the parts’ own documentation and local codes govern.'

export const Caution = (): JSX.Element => (
  <p style={{ margin: 0, padding: '8px 16px', color: 'var(--quiet-ink)', fontSize: '0.6875rem' }}>
    {cautionText}
  </p>
)
