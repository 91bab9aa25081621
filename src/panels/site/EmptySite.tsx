/** In the picture while there is nothing to see: what to do first. */
import type { JSX } from 'react'
import { useApp } from '../../state/store'
import { CommandButtons } from '../inspector/CommandButtons'
import css from './site.module.css'

export function EmptySite(): JSX.Element | null {
  const nothing = useApp(
    ({ plan, savedPlan, tool }) =>
      // Until the first plan is read there is nothing either, but only for a moment.
      savedPlan !== null &&
      tool.kind === 'select' &&
      plan.girders.length + plan.obstacles.length + (plan.decks?.length ?? 0) === 0,
  )
  if (!nothing) return null
  return (
    <div className={css.nothing}>
      <p>Nothing stands here yet. Begin with a girder.</p>
      <CommandButtons ids={['site.drawGirder', 'site.girderTable', 'file.open', 'file.sample']} />
    </div>
  )
}
