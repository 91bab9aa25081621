/** What the trainer does: opens a lesson, moves its thing, asks, reveals, starts again. */
import { readPlan } from '../../plan/read'
import type { Line, Plan } from '../../plan/types'
import { exampleFigures, type LessonId, planFigures, type TeachFigures } from '../../study/teach'
import { app } from '../store'
import { askSetup, askState } from './pretension-client'
import { type Quiz, startValues, type TeachState, teachStore } from './teach-store'

const set = teachStore.setState
const get = teachStore.getState

/** Where the moved things may be asked to go in a quiz, in turn. */
export const quizTargets: Record<LessonId, readonly number[]> = {
  'tie-back': [25, 60, 45, 35],
  sag: [5, 15, 30, 3],
  pretension: [9000, 1000, 11000, 2500],
  lanyard: [0, 2, 1, 0.5],
}

let subject: { plan: Plan; line: string } | null = null

/** The trainer's own line: the one on the tape. */
function ownLine(): Line | undefined {
  const { plan, tapeLine } = app.getState()
  return plan.lines.find((l) => l.id === tapeLine) ?? plan.lines[0]
}

function figuresOf(plan: Plan, line: Line): TeachFigures {
  const governing = app.getState().study.results?.lines.find((l) => l.id === line.id)?.governing
  return planFigures(plan, line, governing?.tension ?? null, governing?.arrestForce ?? null)
}

/** The study has figures of the plan as it is now. */
const studied = (): boolean => app.getState().study.ofPlan === app.getState().plan

/** Taken with the figures that a study of this plan and line gave. */
let taken: { plan: Plan; line: string | undefined; studied: boolean } | null = null

/** The trainer comes in, or comes back: what was moved stays, unless the plan or what is known of it has changed. */
export async function enterTeach(): Promise<void> {
  if (taken && get().source === 'example') return
  const same = taken?.plan === app.getState().plan && taken.line === ownLine()?.id
  if (!same || (!taken?.studied && studied())) await teachFrom('plan')
}

/** Takes the figures of the trainer's plan, or of the built-in example; everything stands as they say. */
export async function teachFrom(source: TeachState['source']): Promise<void> {
  const line = ownLine()
  const { plan } = app.getState()
  taken = { plan, line: line?.id, studied: studied() }
  if (source === 'plan' && line) {
    const figures = figuresOf(plan, line)
    start(source, figures)
    subject = { plan, line: line.id }
  } else {
    start('example', exampleFigures)
    subject = await exampleLine()
  }
  if (subject) await askSetup(subject.plan, subject.line)
}

function start(source: TeachState['source'], figures: TeachFigures): void {
  const values = { ...startValues(figures), pretension: get().values.pretension }
  set({ source, figures, values, lanyardLength: figures.lanyard.length, absorber: true, quiz: null })
}

/** The finished sample's first line stands in for a plan. */
async function exampleLine(): Promise<{ plan: Plan; line: string } | null> {
  const text = (await import('../../../samples/four-girder-bay.plan.json?raw')).default
  const read = readPlan(text)
  const line = read.ok ? read.plan.lines[0] : undefined
  return read.ok && line ? { plan: read.plan, line: line.id } : null
}

export const openLesson = (lesson: LessonId): void => set({ lesson, quiz: null })

/** Moves the thing of the open lesson. */
export function moveThing(value: number): void {
  const { lesson, values } = get()
  set({ values: { ...values, [lesson]: value } })
  if (lesson === 'pretension') computePretension()
}

function computePretension(): void {
  const { values, absorber } = get()
  if (subject) askState({ ...subject, pretension: values.pretension, absorber })
}

export function setAbsorber(absorber: boolean): void {
  set({ absorber })
  computePretension()
}

export const setLanyard = (lanyardLength: number): void => set({ lanyardLength })

/** Everything in this lesson as it was at its start. */
export function resetLesson(): void {
  const { figures, values, lesson, pretension } = get()
  const first = { ...startValues(figures), pretension: pretension.setup?.planned ?? values.pretension }
  set({
    values: { ...values, [lesson]: first[lesson] },
    lanyardLength: lesson === 'lanyard' ? figures.lanyard.length : get().lanyardLength,
    absorber: lesson === 'pretension' ? true : get().absorber,
    quiz: null,
  })
  if (lesson === 'pretension') computePretension()
}

/** Asks the next question: the thing is to go somewhere else, what will come of it? `figure` is what is asked for, as it is now. */
export function ask(figure: number | null): void {
  const { lesson, values, quiz } = get()
  const targets = quizTargets[lesson]
  let asked = quiz ? (quiz.asked + 1) % targets.length : 0
  if (Math.abs(targets[asked]! - values[lesson]) < 1e-6) asked = (asked + 1) % targets.length
  set({ quiz: { asked, from: values[lesson], figure, guess: { way: null, value: null }, revealed: false } })
}

export const guess = (part: Partial<Quiz['guess']>): void =>
  set(({ quiz }) => ({ quiz: quiz && { ...quiz, guess: { ...quiz.guess, ...part } } }))

/** Lets go: the thing goes where it was asked to, and what comes of it is seen. */
export function letGo(): void {
  const { quiz, lesson } = get()
  if (!quiz) return
  set({ quiz: { ...quiz, revealed: true } })
  moveThing(quizTargets[lesson][quiz.asked]!)
}

export const endQuiz = (): void => set({ quiz: null })
