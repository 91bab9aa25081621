/**
 * Papers, comparisons and as-built checks in a worker of their own, so that the window never waits. It studies the plan
 * itself, for a study is not data; lines that are unchanged since the last time are kept.
 */

import regularUrl from '@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf?url'
import boldUrl from '@expo-google-fonts/inter/700Bold/Inter_700Bold.ttf?url'
import * as Comlink from 'comlink'
import fallbackUrl from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url'
import fallbackBoldUrl from 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?url'
import { zipSync } from 'fflate'
import solidEngine from 'manifold-3d/manifold.wasm?url'
import { planHash } from '../../plan/hash'
import type { Plan } from '../../plan/types'
import type { LineDetail } from '../../study/details'
import type { Models } from '../../study/obstacles'
import { type Study, study } from '../../study/study'
import { type Comparison, comparePlans, type Studied } from '../compare'
import { type HandoverFile, handOver } from '../files/hand-over'
import type { HandoverInput } from '../input'
import { meshBounds } from '../mesh-bounds'
import type { PaperFonts } from '../pdf/engine'
import { asBuiltPlan } from '../records/as-built'
import type { Language } from '../words'

export interface PapersJob {
  plan: Plan
  madeAt: string
  revision: string
  languages: readonly Language[]
  /** Keys of the papers that are wanted; null: all. */
  only: readonly string[] | null
  /** Another state of the plan, whose differences get a page. */
  compareWith: Plan | null
  models: Models
  /** Spreads that were computed for exactly this plan. */
  spreads: NonNullable<HandoverInput['spreads']>
}

export type Progress = (share: number, what: string) => void

/** Studying is told as this share of the work, making the papers as the rest. */
const STUDY_SHARE = 0.5

let last: { hash: string; study: Study } | null = null

/** Lines of a plan that gives the same numbers are kept; records, rooms and gaps are looked at anew. */
function studied(plan: Plan, models: Models, progress: Progress): Study {
  const hash = planHash(plan)
  const known = last?.hash === hash ? { known: new Map(last.study.lines.map((l) => [l.id, l])) } : {}
  const made = study(plan, { ...known, models, progress })
  last = { hash, study: made }
  return made
}

const fontFile = async (url: string): Promise<Uint8Array> => {
  const answer = await fetch(url)
  if (!answer.ok) throw new Error('the fonts of the papers could not be read')
  return new Uint8Array(await answer.arrayBuffer())
}

let fonts: Promise<PaperFonts> | null = null

async function readFonts(): Promise<PaperFonts> {
  const [regular, bold, fallback, fallbackBold] = await Promise.all(
    [regularUrl, boldUrl, fallbackUrl, fallbackBoldUrl].map(fontFile),
  )
  return { regular: regular!, bold: bold!, fallback: fallback!, fallbackBold: fallbackBold! }
}

async function make(job: PapersJob, progress: Progress): Promise<HandoverFile[]> {
  fonts ??= readFonts()
  const before = job.compareWith ? study(job.compareWith, { models: job.models }) : null
  const made = studied(job.plan, job.models, (share, what) => progress(share * STUDY_SHARE, what))
  const input = {
    plan: job.plan,
    study: made,
    madeAt: job.madeAt,
    fonts: await fonts,
    solidEngine,
    meshes: meshBounds(job.plan, job.models),
    spreads: job.spreads,
    ...(job.revision ? { revision: job.revision } : {}),
  }
  return handOver(input, {
    languages: job.languages,
    progress: (share, what) => progress(STUDY_SHARE + share * (1 - STUDY_SHARE), what),
    ...(job.only ? { only: job.only } : {}),
    ...(before && job.compareWith ? { compareWith: { plan: job.compareWith, results: before.results } } : {}),
  })
}

/** All files as one archive, in the folders in which the headless verb writes them. */
async function makeArchive(job: PapersJob, progress: Progress): Promise<Uint8Array> {
  const files = await make(job, progress)
  return zipSync(Object.fromEntries(files.map((f) => [f.name, f.bytes])), { mtime: job.madeAt })
}

/** Both plans with their results, and what differs. */
export interface Compared {
  before: Studied
  after: Studied
  comparison: Comparison
  /** Shapes of the earlier plan, for the picture. */
  details: LineDetail[]
}

function compare(before: Plan, after: Plan, models: Models, progress: Progress): Compared {
  const first = study(before, { models, progress: (share, what) => progress(share / 2, what) })
  const second = studied(after, models, (share, what) => progress(0.5 + share / 2, what))
  const pair = {
    before: { plan: before, results: first.results },
    after: { plan: after, results: second.results },
  }
  return { ...pair, comparison: comparePlans(pair.before, pair.after), details: first.details }
}

/** The plan as measured against the plan as designed. */
const checkAsBuilt = (plan: Plan, models: Models, progress: Progress): Comparison =>
  compare(plan, asBuiltPlan(plan), models, progress).comparison

const worker = { make, makeArchive, compare, checkAsBuilt }

export type PapersWorker = typeof worker

Comlink.expose(worker)
