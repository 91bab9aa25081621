/** What is selected, with every dimension to type; with nothing selected, the plan itself. */
import type { JSX } from 'react'
import { resolveRef } from '../../state/refs'
import { useApp } from '../../state/store'
import { kindWord, refName } from '../words/status'
import { DeckFields } from './DeckFields'
import { GirderFields } from './GirderFields'
import css from './inspector.module.css'
import { LineFields } from './LineFields'
import { LoopRowFields } from './LoopRowFields'
import { ManyFields } from './ManyFields'
import { ObstacleFields } from './ObstacleFields'
import { PlanFields } from './PlanFields'
import { StanchionFields } from './StanchionFields'
import { TieBackFields } from './TieBackFields'
import { WorkerFields } from './WorkerFields'

export function Inspector(): JSX.Element {
  const selection = useApp((s) => s.selection)
  const plan = useApp((s) => s.plan)
  const one = selection.length === 1 ? selection[0] : undefined
  const found = one ? resolveRef(plan, one) : null
  return (
    <section className={css.inspector} aria-label="Selection" data-testid="inspector">
      <div className={css.head}>
        <h2>
          {one ? refName(plan, one) : selection.length > 1 ? `${selection.length} selected` : 'Plan'}
          {one ? <span className={css.kind}> {kindWord[one.kind]}</span> : null}
        </h2>
      </div>
      {selection.length > 1 ? <ManyFields refs={selection} /> : null}
      {selection.length === 0 ? <PlanFields /> : null}
      {found?.kind === 'girder' ? <GirderFields girder={found.girder} /> : null}
      {found?.kind === 'loop-row' ? <LoopRowFields row={found.row} girder={found.girder} /> : null}
      {found?.kind === 'deck' ? <DeckFields deck={found.deck} /> : null}
      {found?.kind === 'line' ? <LineFields line={found.line} /> : null}
      {found?.kind === 'stanchion' ? <StanchionFields line={found.line} stanchion={found.stanchion} /> : null}
      {found?.kind === 'tie-back' ? <TieBackFields line={found.line} tieBack={found.tieBack} /> : null}
      {found?.kind === 'worker' ? <WorkerFields worker={found.worker} /> : null}
      {found?.kind === 'obstacle' ? <ObstacleFields obstacle={found.obstacle} /> : null}
    </section>
  )
}
