/**
 * Cut, copy and paste within and between plans: the clipboard holds a small JSON text of our own. Whatever else is found
 * there is left alone, and pasting it does nothing.
 */
import { tell } from './ask'
import { edit } from './edit'
import { type Clip, clipOf, pasteClip, readClip } from './edits/clip'
import { recall, remember } from './memory'
import type { Ref } from './refs'
import { deleteSelection } from './selection-edits'
import { app } from './store'

export async function copySelection(): Promise<boolean> {
  const { plan, selection } = app.getState()
  const clip = clipOf(plan, selection)
  if (!clip) {
    tell('Girders, lines, decks, crew and obstacles can be copied.', 'look')
    return false
  }
  const text = JSON.stringify(clip)
  remember('clipboard', text)
  await navigator.clipboard?.writeText(text).catch(() => undefined)
  return true
}

export async function cutSelection(): Promise<void> {
  if (await copySelection()) await deleteSelection()
}

/** Pastes what was copied last: from the system's clipboard where it may be read, else what this machine remembers. */
export async function pasteFromDesk(): Promise<void> {
  const shared = await navigator.clipboard?.readText?.().catch(() => null)
  pasteText(readClip(shared ?? '') ? (shared ?? '') : (recall('clipboard') ?? ''))
}

/** True where the text was ours. */
function pasteText(text: string): boolean {
  const clip: Clip | null = readClip(text)
  if (!clip) return false
  let made: Ref[] = []
  const misfits: string[] = []
  edit('paste', (draft) => {
    made = pasteClip(draft, clip, misfits)
  })
  if (made.length > 0) app.setState({ selection: made })
  if (misfits.length > 0) tell(misfits.join(' '), 'look')
  return made.length > 0
}
