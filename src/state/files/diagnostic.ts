/** The diagnostic file that the person may save and give to whoever looks after the program. Nothing sends it. */
import { getDesk } from '../../desk/desk'
import { diagnosticText } from '../../desk/diagnostics'
import { tell } from '../ask'
import { app } from '../store'

const KEPT = 50
const errors: string[] = []

/** Remembers what goes wrong from now on. */
export function startErrorLog(): void {
  window.addEventListener('error', (event) => noteError(event.error ?? event.message))
  window.addEventListener('unhandledrejection', (event) => noteError(event.reason))
}

/** For an error boundary, which catches its errors before the window hears of them. */
export function noteError(error: unknown): void {
  errors.push(error instanceof Error ? (error.stack ?? error.message) : String(error))
  errors.splice(0, errors.length - KEPT)
}

export async function saveDiagnostic(names: boolean): Promise<void> {
  const { plan, study } = app.getState()
  const desk = getDesk()
  const facts = await desk.facts()
  const failed = study.error === null ? errors : [...errors, study.error]
  const at = new Date().toISOString()
  const text = diagnosticText({ facts, at, plan, results: study.results, errors: failed }, names)
  const name = `fallroom-diagnostic-${at.slice(0, 10)}.json`
  const saved = await desk.exportFile(name, new TextEncoder().encode(text), 'application/json')
  if (saved.ok) tell(`Saved ${saved.value}. It was sent to nobody.`)
  else if (saved.code !== 'cancelled') tell(saved.why, 'fails')
}
