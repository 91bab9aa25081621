/**
 * Records are only ever added. What was written down stays when plan changes are undone or redone, so a record goes into
 * every state that history remembers, and makes no entry of its own there.
 */
import { recordId, withRecord } from '../plan/records/log'
import type { PlanRecord } from '../plan/types'
import { app, history } from './store'

type Unnumbered<R> = R extends PlanRecord ? Omit<R, 'id' | 'at'> : never

/** Writes a record into the plan's log; `at` is now where it is not given (ISO 8601). */
export function addRecord(record: Unnumbered<PlanRecord>, at = new Date().toISOString()): void {
  const { plan } = app.getState()
  const whole = { ...record, id: recordId(plan), at } as PlanRecord
  const { pastStates, futureStates, pause, resume } = history()
  pause()
  app.setState({ plan: withRecord(plan, whole) })
  const kept = <S extends { plan?: typeof plan }>(states: S[]): S[] =>
    states.map((s) => (s.plan ? { ...s, plan: withRecord(s.plan, whole) } : s))
  app.temporal.setState({ pastStates: kept(pastStates), futureStates: kept(futureStates) })
  resume()
}
