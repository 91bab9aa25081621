/** What a search found and claims, in sentences, for the window and for a terminal. */
import type { Plan } from '../../plan/types'
import { say } from '../../rules/words'
import { choiceWords } from './choices'
import type { Candidate, CountReport, FindResult } from './types'

export function candidateWords(plan: Plan, c: Candidate): string {
  const { units } = plan
  const figure = (value: number | null, unit: string): string =>
    value === null ? 'not known' : say(value, unit, units)
  const at = c.layout.stations.map((s) => say(s, 'm', units)).join(', ')
  const parts = choiceWords(plan, c.layout.choice, say(c.layout.choice.pretension, 'N', units))
  return `${c.stanchions} stanchions at ${at} (${parts}); clearance needed ${figure(c.clearance, 'm')}, tension ${figure(c.tension, 'N')}, least gap below ${figure(c.gap, 'm')}.`
}

/** "3 stanchions: none passes (anchor spacing)." with the first reasons as sentences. */
export function countWords(c: CountReport): string[] {
  const studied = c.studied > 0 ? `, ${c.studied} studied whole` : ''
  return [
    `${c.stanchions} stanchions: ${c.status}${studied}.`,
    ...c.reasons.map((r) => `  ${r.rule}: ${r.text}`),
  ]
}

/** What is claimed and within what. */
export function claimWords(r: FindResult): string[] {
  if (r.outcome !== 'found' || !r.best) return []
  const fewest =
    r.claims.fewest === 'proven'
      ? 'No layout with fewer stanchions passes: proven within what was looked at.'
      : 'Whether a layout with fewer stanchions passes is not proven.'
  const least =
    r.claims.least === 'proven'
      ? 'None with as few is better in the first figure of the chosen order (by more than 5 mm or half a percent).'
      : 'Whether another with as few is better in the chosen order is not proven.'
  return [fewest, least]
}
