/**
 * What of a plan was hidden or locked stays so over a restart. It is how one person looks at the plan, not a part of it: it
 * is kept on this machine by the place of the file, so that who opens the plan elsewhere sees all of it.
 */
import { usedIds } from '../../plan/ids'
import type { Plan } from '../../plan/types'
import { recall, remember } from '../memory'
import { app } from '../store'

export interface Sight {
  hidden: string[]
  locked: string[]
}

interface KeptSight extends Sight {
  place: string
}

/** Of so many files it is kept, the last ones. */
const MOST = 40

/** How the plan at a place was last looked at; of what the plan no longer has nothing is said. */
export function sightOf(place: string | null | undefined, plan: Plan): Sight {
  const found = place ? all().find((kept) => kept.place === place) : undefined
  const ids = usedIds(plan)
  const alive = (list: string[] | undefined): string[] => (list ?? []).filter((id) => ids.has(id))
  return { hidden: alive(found?.hidden), locked: alive(found?.locked) }
}

/** What a person must be told of it, so that nothing is missed that is merely not shown; empty for nothing hidden. */
export const hiddenWords = ({ hidden }: Sight): string =>
  hidden.length === 0
    ? ''
    : `${hidden.length} ${hidden.length === 1 ? 'thing is' : 'things are'} hidden, as when this plan was last open here.`

/** From now on every change of it is kept for the open file. */
export function startKeepingSight(): () => void {
  return app.subscribe((now, before) => {
    if (now.hidden === before.hidden && now.locked === before.locked && now.file.path === before.file.path)
      return
    if (now.file.path) keep({ place: now.file.path, hidden: now.hidden, locked: now.locked })
  })
}

function keep(sight: KeptSight): void {
  const others = all().filter((kept) => kept.place !== sight.place)
  const plain = sight.hidden.length + sight.locked.length === 0
  if (plain && others.length === all().length) return
  remember('sight', JSON.stringify((plain ? others : [sight, ...others]).slice(0, MOST)))
}

/** Anything else than what was written here counts as nothing. */
function all(): KeptSight[] {
  try {
    const read: unknown = JSON.parse(recall('sight') ?? '[]')
    return Array.isArray(read) ? read.filter(isKept) : []
  } catch {
    return []
  }
}

const isKept = (value: Partial<KeptSight> | null): value is KeptSight =>
  typeof value?.place === 'string' && isTexts(value.hidden) && isTexts(value.locked)

const isTexts = (list: unknown): boolean => Array.isArray(list) && list.every((id) => typeof id === 'string')
