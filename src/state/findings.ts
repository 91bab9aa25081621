/** Choosing a finding: the scene flies to it, what it is about is selected, its "why" opens. */
import type { Plan } from '../plan/types'
import type { Finding, Results } from '../study/results'
import { chooseFinding, look } from './actions'
import { tell } from './ask'
import { isFinding } from './derived'
import { addRecord } from './records'
import { lineOfRef, type Ref, refOfId } from './refs'
import { app } from './store'
import type { FindingKey } from './window-state'

export const findingOf = (results: Results | null, key: FindingKey | null): Finding | null =>
  results?.findings.find((f) => isFinding(f, key)) ?? null

/** What a finding is about, as something to select; null where the plan no longer has it. */
const refOfFinding = (plan: Plan, key: FindingKey): Ref | null => refOfId(plan, key.subject)

export function chooseAndFly(key: FindingKey): void {
  const { plan, study, finding } = app.getState()
  if (finding && isFinding({ ...key } as Finding, finding)) {
    chooseFinding(null)
    return
  }
  chooseFinding(key)
  const ref = refOfFinding(plan, key)
  const at = study.results?.obstacles.find((o) => o.id === key.subject)?.at
  if (ref) {
    const line = lineOfRef(plan, ref)?.id ?? study.results?.obstacles.find((o) => o.id === key.subject)?.line
    app.setState({ selection: [ref], tapeLine: line ?? app.getState().tapeLine })
  }
  if (at) look({ point: at })
  else if (ref) look({ ref })
}

/** Writes down what was decided about a finding. Its status stays what it is. */
export function noteFinding(key: FindingKey, by: string, text: string): void {
  addRecord({ kind: 'finding-note', by, rule: key.rule, subject: key.subject, text })
  tell('Noted. The finding itself stays as it is.')
}
