import { Button, Progress } from '@mantine/core'
import type { JSX } from 'react'
import { formatForce, formatLength } from '../../plan/units'
import { clashStore, findClearing, stopClearing, takeWay } from '../../state/clashes/clash-store'
import { useApp } from '../../state/store'
import type { ClearWay } from '../../study/clear'
import { ruleWord } from '../findings/words'
import css from './clashes.module.css'

/** What would clear this obstacle: computed on demand, each with what else it would make fail. */
export function ClearWays({ obstacle, line }: { obstacle: string; line: string }): JSX.Element {
  const clearing = clashStore((s) => s.clearing)
  const plan = useApp((s) => s.plan)
  const own = clearing?.obstacle === obstacle && clearing.of === plan ? clearing : null
  return (
    <>
      <h3>What would clear it</h3>
      {own ? null : (
        <Button size="xs" variant="default" onClick={() => findClearing(obstacle, line)}>
          Compute what would clear it
        </Button>
      )}
      {own?.state === 'running' ? (
        <div className={css.running}>
          <Progress value={own.share * 100} aria-label="How far it is" />
          <Button size="compact-xs" variant="subtle" onClick={stopClearing}>
            Stop
          </Button>
        </div>
      ) : null}
      {own?.state === 'failed' ? <p className={css.fault}>It could not be computed: {own.why}</p> : null}
      {own?.ways.map((way) => (
        <Way key={way.kind} way={way} />
      ))}
      {own?.state === 'done' && own.ways.length === 0 ? (
        <p className={css.quiet}>None of the three ways could be computed.</p>
      ) : null}
    </>
  )
}

function Way({ way }: { way: ClearWay }): JSX.Element {
  const units = useApp((s) => s.units)
  const gap = Number.isFinite(way.gap) ? formatLength(way.gap, units) : 'nothing shared any more'
  return (
    <div className={css.way} data-way={way.kind} data-clears={way.clears}>
      <p>
        {wayWords(way, units)} {way.clears ? `clears it: ${gap} left.` : `does not clear it: ${gap}.`}
      </p>
      {way.alsoFails.length > 0 ? (
        <p className={css.quiet}>
          Then also fails:{' '}
          {way.alsoFails.map((f) => `${ruleWord[f.rule] ?? f.rule} of ${f.subject}`).join('; ')}.
        </p>
      ) : null}
      {way.clears ? (
        <Button size="compact-xs" variant="default" onClick={() => takeWay(way)}>
          Make this change
        </Button>
      ) : null}
    </div>
  )
}

function wayWords({ kind, value, from }: ClearWay, units: 'us' | 'si'): string {
  switch (kind) {
    case 'stanchions':
      return `${value} more ${value === 1 ? 'stanchion' : 'stanchions'} in this span`
    case 'connector':
      return `A connector of at most ${formatLength(value, units)} (now ${formatLength(from, units)})`
    case 'pretension':
      return `A pretension of ${formatForce(value, units)} (now ${formatForce(from, units)})`
  }
}
