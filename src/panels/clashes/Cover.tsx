import { Switch } from '@mantine/core'
import type { JSX } from 'react'
import { coveredShare, showTieOff, tieOffStore } from '../../state/clashes/tie-off'
import { useApp } from '../../state/store'
import css from './clashes.module.css'

/** Where can one tie off: shows the map in the scene, and tells how much of the surfaces is in reach. */
export function Cover(): JSX.Element {
  const plan = useApp((s) => s.plan)
  const shown = tieOffStore((s) => s.shown)
  const share = shown ? coveredShare(plan) : null
  return (
    <section aria-label="Where one can tie off">
      <h3>Where one can tie off</h3>
      <Switch
        size="xs"
        label="Show it on the walking surfaces"
        checked={shown}
        onChange={(e) => showTieOff(e.currentTarget.checked)}
      />
      {share === null ? null : (
        <p className={css.quiet} data-testid="cover">
          {Math.round(share * 100)} % of girder tops and decks lie in reach of a line; what does not is
          hatched. A retractable counts with its lock-off distance only.
        </p>
      )}
    </section>
  )
}
