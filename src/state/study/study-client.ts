/** Keeps the study in step with the plan: quick results while a hand moves something, whole ones when it rests. */
import type { Skin } from '../../geometry/room/skin/skin'
import type { Plan } from '../../plan/types'
import type { Explained } from '../../solver/explain'
import type { ClashDetail, ClashPlace } from '../../study/clash-detail'
import type { Results } from '../../study/results'
import { awaitPicture, firstPicture } from '../first-picture'
import { modelStore } from '../models/model-store'
import { app } from '../store'
import type { FindingKey } from '../window-state'
import { createHeld } from './held'
import { keepEqual, keepShown } from './keep-shown'
import { createRunner, type Outcome, type Runner } from './runner'

/** After this long without a change the falls in time are computed, ms; later while a hand still holds on. */
const REST = 250
const REST_HELD = 900

let quick: Runner | null = null
let whole: Runner | null = null
let timer = 0

const set = (part: Partial<ReturnType<typeof app.getState>['study']>): void =>
  app.setState((s) => ({ study: { ...s.study, ...part } }))

const again = 'The computation had to be started again; these results are from the new run.'

/** The plan that the surfaces shown are of. */
let skinsPlan: Plan | null = null

function showSkins(came: Skin[], of: Plan): void {
  const skins = keepShown(app.getState().study.skins, skinsPlan, came, of, (s) => s.line)
  skinsPlan = of
  set({ skins })
}

/** Findings and gaps that say what they said stay the objects that the panels show. */
function withKnown(came: Results): Results {
  const shown = app.getState().study.results
  if (!shown) return came
  return {
    ...came,
    findings: keepEqual(shown.findings, came.findings, (f) => `${f.rule} ${f.subject}`),
    obstacles: keepEqual(shown.obstacles, came.obstacles, (o) => o.id),
  }
}

/**
 * What comes when the hand has already moved on is shown with its next move, so that window and picture are made once for
 * both; where no move comes, after this long, ms.
 */
const WITH_NEXT_MOVE = 50

const inHand = createHeld<Outcome>(showQuick, WITH_NEXT_MOVE)

function onQuick(outcome: Outcome): void {
  inHand.hold(outcome)
  const { gesture, plan } = app.getState()
  if (gesture === null || outcome.plan === plan) inHand.release()
}

function showQuick(outcome: Outcome): void {
  if (outcome.kind === 'failed') {
    if (outcome.plan === app.getState().plan) set({ status: 'failed', error: outcome.why })
    return
  }
  const { study } = app.getState()
  if (outcome.kind === 'skins') {
    if (!(study.ofPlan === outcome.plan && study.whole)) showSkins(outcome.skins, outcome.plan)
    return
  }
  if (study.ofPlan === outcome.plan && study.whole) return
  const results = withKnown(outcome.studied.results)
  const details = keepShown(study.details, study.ofPlan, outcome.studied.details, outcome.plan, (d) => d.id)
  set({ results, details, ofPlan: outcome.plan, whole: false, error: null, ...note(outcome.restarted) })
}

function onWhole(outcome: Outcome): void {
  if (outcome.plan !== app.getState().plan) return
  if (outcome.kind === 'failed') {
    set({ status: 'failed', error: outcome.why })
    return
  }
  if (outcome.kind === 'skins') {
    skinsPlan = outcome.plan
    set({ skins: outcome.skins })
    return
  }
  const { details } = outcome.studied
  const results = withKnown(outcome.studied.results)
  set({
    status: 'done',
    progress: 1,
    results,
    details,
    ofPlan: outcome.plan,
    whole: true,
    error: null,
    ...note(outcome.restarted),
  })
}

const note = (restarted: boolean): { notice: string | null } | object => (restarted ? { notice: again } : {})

/** From now on every plan that the window shows is studied. Returns what stops it. */
export function startStudy(): () => void {
  const job = (withoutTime: boolean) => () => ({ withoutTime })
  quick = createRunner(job(true), onQuick, () => undefined, false)
  whole = createRunner(job(false), onWhole, (progress, doing) => set({ progress, doing }), true)
  awaitPicture()
  studyNow()
  const off = app.subscribe((state, before) => {
    const letGo = before.gesture !== null && state.gesture === null
    if (state.plan !== before.plan || letGo) inHand.release()
    if (state.plan !== before.plan) studyNow()
    else if (letGo) wholeSoon()
  })
  const offModels = modelStore.subscribe((state, before) => {
    if (settled(state.byFile) !== settled(before.byFile)) studyNow(true)
  })
  return () => {
    off()
    offModels()
    inHand.drop()
    quick?.close()
    whole?.close()
  }
}

/** Which models are read or refused, as one text: progress while reading is no reason to study again. */
const settled = (byFile: ReturnType<typeof modelStore.getState>['byFile']): string =>
  JSON.stringify([...byFile].map(([file, m]) => [file, m.state, m.state === 'read' ? m.soup.hash : '']))

/** `anew`: what is known of this very plan does not hold any more, since a model was read or refused only now. */
function studyNow(anew = false): void {
  set({ status: 'running', progress: 0, notice: null, ...(anew ? { whole: false } : {}) })
  void firstPicture.then(() => quick?.want(app.getState().plan, anew))
  wholeSoon()
}

/** The falls in time of what is no longer the plan only take the processor from the quick study. */
function wholeSoon(): void {
  window.clearTimeout(timer)
  const { plan, study, gesture } = app.getState()
  if (study.whole && study.ofPlan === plan) return
  whole?.hold()
  timer = window.setTimeout(
    async () => {
      await firstPicture
      whole?.want(app.getState().plan)
    },
    gesture === null ? REST : REST_HELD,
  )
}

/** Gives up the falls in time that are being computed; what the quick study says stays. */
export function cancelStudy(): void {
  window.clearTimeout(timer)
  whole?.stop()
  set({ status: 'cancelled', progress: 0 })
}

/** The detail of a clash as the newest whole study has it, or the quick one where there is no whole one yet. */
export async function detailOfClash(at: ClashPlace): Promise<ClashDetail | null> {
  const runner = app.getState().study.whole ? whole : quick
  return (await runner?.clash(at).catch(() => null)) ?? null
}

/** Once more from the start. */
export function studyAgain(): void {
  studyNow(true)
}

/** The sum behind a finding as it is shown now; null while it is being computed, or where there is none. */
export async function whyFinding(key: FindingKey): Promise<Explained | null> {
  const runner = app.getState().study.whole ? whole : quick
  return (await runner?.why(key.rule, key.subject).catch(() => null)) ?? null
}
