/** What the keys and menus do to whatever is selected. */
import { ask, tell } from './ask'
import { edit } from './edit'
import { duplicateRefs } from './edits/duplicate'
import { dependentsOf, removeRef } from './edits/remove'
import { middleOf, moveRefs, turnRefs } from './edits/transform'
import { pruneWindow } from './prune'
import type { Ref } from './refs'
import { app } from './store'

/** Selected things that are not locked. */
function unlocked(): Ref[] {
  const { selection, locked } = app.getState()
  const free = selection.filter((ref) => !locked.includes(ref.id))
  if (free.length < selection.length) tell('What is locked stays as it is.', 'look')
  return free
}

/** Deletes what is selected; asks first where other things go along. */
export async function deleteSelection(): Promise<void> {
  const refs = unlocked()
  const { plan } = app.getState()
  const along = [...new Set(refs.flatMap((ref) => dependentsOf(plan, ref)))]
  const selected = new Set(refs.map((r) => r.id))
  const grave = refs.some((r) => r.kind === 'girder' || r.kind === 'loop-row') && along.length > 0
  if (grave && !(await agreed(along.filter((name) => !selected.has(name))))) return
  const left: string[] = []
  edit(`delete ${told(refs)}`, (draft) => {
    for (const ref of refs) if (!removeRef(draft, ref) && stillThere(draft, ref)) left.push(ref.id)
  })
  if (left.length > 0)
    tell(`${left.join(', ')} can not go: a line keeps two stanchions, and a part in use stays.`, 'look')
  pruneWindow()
}

const stillThere = (plan: Parameters<typeof removeRef>[0], ref: Ref): boolean =>
  ref.kind === 'stanchion'
    ? plan.lines.some((l) => l.stanchions.some((s) => s.id === ref.id))
    : ref.kind === 'part' && plan.parts.some((p) => p.id === ref.id)

const told = (refs: readonly Ref[]): string =>
  refs.length === 1 ? (refs[0]?.id ?? '') : `${refs.length} things`

async function agreed(along: string[]): Promise<boolean> {
  const choice = await ask({
    title: 'Other things go along',
    text: `This also takes away: ${along.join(', ')}. Undo brings it all back.`,
    choices: [
      { value: 'delete', label: 'Delete them all', main: true, grave: true },
      { value: 'stay', label: 'Keep them' },
    ],
  })
  return choice === 'delete'
}

export function duplicateSelection(): void {
  const refs = app.getState().selection
  let made: Ref[] = []
  edit(`duplicate ${told(refs)}`, (draft) => {
    made = duplicateRefs(draft, refs)
  })
  if (made.length > 0) app.setState({ selection: made })
  else tell('A tie-back or a row of loops is added where it belongs, not duplicated.', 'look')
}

/** Counter-clockwise from above, about the middle of what is selected. */
export function turnSelection(degrees: number): void {
  const refs = unlocked()
  edit(`turn ${told(refs)}`, (draft) => {
    turnRefs(draft, refs, degrees, middleOf(draft, refs))
  })
}

/** One grid step, 1 ft or 0.25 m, along x and y. */
export function moveSelectionBy(dx: number, dy: number): void {
  const refs = unlocked()
  const grid = app.getState().units === 'us' ? 0.3048 : 0.25
  edit(`move ${told(refs)}`, (draft) => {
    moveRefs(draft, refs, [dx * grid, dy * grid, 0])
  })
}
