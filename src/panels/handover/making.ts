/** What the papers' worker is at, and what the Hand over view keeps while the window is open; none of it is in the plan. */
import { create } from 'zustand'
import type { HandoverFile } from '../../handover/files/hand-over'
import type { Language } from '../../handover/words'
import { inPapersWorker, type Made, stopPapers } from '../../handover/worker/papers'
import type { PapersJob, Progress } from '../../handover/worker/papers-worker'
import { planHash } from '../../plan/hash'
import type { Plan } from '../../plan/types'
import { tell } from '../../state/ask'
import { useFind } from '../../state/find/find-client'
import { modelsForStudy } from '../../state/models/model-store'
import { app } from '../../state/store'

interface Making {
  /** Share done of the work under way, and what it is at; null: nothing is being made. */
  at: { share: number; what: string } | null
  revision: string
  languages: Language[]
  /** Another state of the plan, chosen under Compare; the package then gets a page about it. */
  compareWith: { plan: Plan; name: string } | null
}

export const useMaking = create<Making>()(() => ({
  at: null,
  revision: '',
  languages: ['en'],
  compareWith: null,
}))

const progress: Progress = (share, what) => useMaking.setState({ at: { share, what } })

/** Does one piece of work with its progress shown; null where it failed or was stopped, which the person is told. */
export async function making<T>(
  what: string,
  work: Parameters<typeof inPapersWorker<T>>[0],
): Promise<T | null> {
  if (useMaking.getState().at) return null
  useMaking.setState({ at: { share: 0, what } })
  const made: Made<T> = await inPapersWorker(work, progress)
  useMaking.setState({ at: null })
  if (made.ok) return made.value
  if (made.why === 'stopped') tell('Stopped: nothing was made.', 'look')
  else tell(`This could not be made: ${made.why}`, 'fails')
  return null
}

export const stopMaking = (): void => stopPapers()

/** The work that the choices in the view come to. */
function jobOf(only: readonly string[] | null): PapersJob {
  const { revision, languages, compareWith } = useMaking.getState()
  return {
    plan: app.getState().plan,
    madeAt: new Date().toISOString(),
    revision: revision.trim(),
    languages,
    only,
    compareWith: compareWith?.plan ?? null,
    models: modelsForStudy(),
    spreads: currentSpreads(),
  }
}

/** A spread belongs into the package only while it is of the plan as it is. */
function currentSpreads(): PapersJob['spreads'] {
  const { spread } = useFind.getState()
  const { plan } = app.getState()
  return spread && planHash(spread.plan) === planHash(plan)
    ? [{ line: spread.line, result: spread.result }]
    : []
}

/** The files of some papers, by their keys. */
export const makeFiles = (key: string): Promise<HandoverFile[] | null> =>
  making('studying the plan', (api, told) => api.make(jobOf([key]), told))

export const makeArchive = (): Promise<Uint8Array | null> =>
  making('studying the plan', (api, told) => api.makeArchive(jobOf(null), told))
