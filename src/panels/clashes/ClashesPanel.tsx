/** Clashes: every gap worst first, and for the chosen one a section, the sum of distances and what would clear it. */
import { type JSX, useMemo } from 'react'
import { clashesOf, filtered } from '../../state/clashes/clash-list'
import { clashStore } from '../../state/clashes/clash-store'
import { useApp } from '../../state/store'
import { Caution } from '../words/Caution'
import { ClashDetails } from './ClashDetails'
import { ClashRow } from './ClashRow'
import { Cover } from './Cover'
import css from './clashes.module.css'
import { Filters } from './Filters'
import { Models } from './Models'

export default function ClashesPanel(): JSX.Element {
  const plan = useApp((s) => s.plan)
  const results = useApp((s) => s.study.results)
  const filter = clashStore((s) => s.filter)
  const chosen = clashStore((s) => s.chosen)
  const all = useMemo(() => clashesOf(plan, results), [plan, results])
  const shown = useMemo(() => filtered(all, filter), [all, filter])
  const picked = all.find((c) => c.result.id === chosen)
  return (
    <div className={css.panel}>
      <div className={css.body} data-testid="clashes">
        <h2>Clashes</h2>
        <Filters all={all} />
        <div className={css.list}>
          {shown.map((clash) => (
            <ClashRow key={clash.result.id} clash={clash} chosen={clash.result.id === chosen} />
          ))}
        </div>
        {shown.length === 0 ? <p className={css.quiet}>{emptyWords(all.length)}</p> : null}
        {picked ? <ClashDetails clash={picked} /> : null}
        <Cover />
        <Models />
      </div>
      <Caution />
    </div>
  )
}

const emptyWords = (count: number): string =>
  count === 0
    ? 'The plan names nothing that a fall could meet. Add ground, water, boxes, lanes or a model in Site.'
    : 'Nothing passes this filter.'
