/** Keeps unsaved work in the desk's journal, and offers it again at the next start. */
import type { JournalEntry } from '../../desk/bridge'
import { getDesk } from '../../desk/desk'
import { readPlan } from '../../plan/read'
import { writePlan } from '../../plan/write'
import { ask, tell } from '../ask'
import { app, isDirty } from '../store'
import { showPlan } from './document'

/** After this long without a further change, ms. */
const PAUSE = 400
/** Changes without a pause between them are kept this often, ms. */
const AT_LEAST = 2000

/** From now on every change reaches the journal, and the desk knows title and unsaved state. */
export function startJournal(): () => void {
  let timer = 0
  let waitingSince: number | null = null
  const put = (): void => {
    const state = app.getState()
    waitingSince = null
    if (state.gesture) return
    const kept = isDirty(state)
      ? getDesk().journal.write(state.file.id, state.file.name ?? state.plan.title, writePlan(state.plan))
      : getDesk().journal.clear(state.file.id)
    void kept.then((said) => {
      if (!said.ok && said.code !== 'host-gone') tell(`Changes are not kept for a crash: ${said.why}`, 'look')
    })
  }
  return app.subscribe((state, before) => {
    if (
      state.plan === before.plan &&
      state.savedPlan === before.savedPlan &&
      state.gesture === before.gesture
    )
      return
    const name = state.file.name ?? state.plan.title
    getDesk().setDocument(`${name} - Fallroom`, isDirty(state))
    window.clearTimeout(timer)
    waitingSince ??= performance.now()
    timer = window.setTimeout(put, Math.min(PAUSE, Math.max(0, waitingSince + AT_LEAST - performance.now())))
  })
}

/**
 * Offers what a program that ended left behind; true where a plan was restored. `place`: only what belongs to that file,
 * since the person asked for it by name.
 */
export async function offerRestore(place?: string): Promise<boolean> {
  const pending = await getDesk().journal.pending()
  if (!pending.ok) return false
  const offers = pending.value.filter((entry) => place === undefined || entry.file?.place === place)
  for (const entry of offers) if (await offer(entry)) return true
  return false
}

async function offer(entry: JournalEntry): Promise<boolean> {
  const read = readPlan(entry.text)
  if (!read.ok) return false
  const changed = entry.fileChanged ? ' The file on disk has been changed since then.' : ''
  const choice = await ask({
    title: 'Unsaved work was kept',
    text: `${entry.name}, as it was ${new Date(entry.at).toLocaleString()}.${changed}`,
    choices: [
      { value: 'restore', label: 'Bring it back', main: true },
      { value: 'drop', label: 'Throw it away', grave: true },
      { value: 'later', label: 'Ask again next time' },
    ],
  })
  if (choice === 'drop') await getDesk().journal.drop(entry.entry)
  if (choice !== 'restore') return false
  const { file } = entry
  // Kept again before it is shown, so that at no moment the journal is without it.
  await getDesk().journal.write(file?.id ?? null, entry.name, entry.text)
  const where = file ? { id: file.id, path: file.place, name: file.name, readOnly: file.readOnly } : {}
  showPlan(read.plan, where, false)
  await getDesk().journal.drop(entry.entry)
  return true
}
