/** Opens, saves and replaces the plan. A plan that can't be read leaves the open one as it is. */
import type { FileRef, OpenedFile } from '../../desk/bridge'
import { getDesk } from '../../desk/desk'
import { planFaults, readPlan } from '../../plan/read'
import type { Plan } from '../../plan/types'
import { writePlan } from '../../plan/write'
import { ask, tell } from '../ask'
import { endBeside } from '../compare/beside'
import { cancelGesture } from '../edit'
import { emptyPlan } from '../empty-plan'
import { app, history, isDirty } from '../store'
import { type FileState, freshWindow } from '../window-state'
import { hiddenWords, sightOf } from './kept-sight'

const noFile: FileState = { id: null, path: null, name: null, readOnly: null, sample: false }

/** Makes a plan the open one, with a history that begins now. */
export function showPlan(plan: Plan, file: Partial<FileState> = {}, saved = true): void {
  cancelGesture()
  endBeside()
  const { selection, hover, finding, hoverFinding, tool, ghost } = freshWindow()
  app.setState({
    plan,
    edited: '',
    savedPlan: saved ? plan : null,
    units: plan.units,
    file: { ...noFile, ...file },
    tapeLine: plan.lines[0]?.id ?? null,
    ...{ selection, hover, finding, hoverFinding, tool, ghost },
    ...sightOf(file.path, plan),
    camera: { n: app.getState().camera.n + 1, to: 'home' },
  })
  history().clear()
}

const fileState = (file: FileRef): FileState => ({
  id: file.id,
  path: file.place,
  name: file.name,
  readOnly: file.readOnly,
  sample: false,
})

/** Reads text into the window; says why where it is no plan. */
export async function openText(text: string, file: Partial<FileState>): Promise<boolean> {
  const read = readPlan(text)
  if (read.ok) {
    showPlan(read.plan, file)
    const words = [...read.notes, hiddenWords(app.getState())].filter((text) => text !== '')
    if (words.length > 0) tell(words.join(' '), 'look')
    return true
  }
  const shown = read.faults.slice(0, 8).map((f) => `${f.path}: ${f.message}`)
  const more = read.faults.length > 8 ? [`and ${read.faults.length - 8} more`] : []
  const title = `${file.name ?? 'The file'} could not be opened`
  await ask({
    title,
    text: [...shown, ...more].join('\n'),
    choices: [{ value: 'close', label: 'Keep the open plan', main: true }],
  })
  return false
}

export const openFile = (file: OpenedFile): Promise<boolean> => openText(file.text, fileState(file))

/** Asks what to do with unsaved changes; false where the person wants to stay. */
export async function mayLeave(): Promise<boolean> {
  const state = app.getState()
  if (!isDirty(state) || isBlank(state.plan)) return true
  const choice = await ask({
    title: 'Save the changes first?',
    text: `${state.plan.title} has changes that are not saved.`,
    choices: [
      { value: 'save', label: 'Save', main: true },
      { value: 'drop', label: 'Do not save', grave: true },
      { value: 'stay', label: 'Stay here' },
    ],
  })
  if (choice === 'save') return save()
  if (choice === 'drop') await getDesk().journal.clear(state.file.id)
  return choice === 'drop'
}

/** Nothing in it that could be lost. */
const isBlank = (plan: Plan): boolean =>
  plan.girders.length + plan.lines.length + plan.obstacles.length + plan.workers.length === 0

export async function newPlan(): Promise<void> {
  if (await mayLeave()) showPlan(emptyPlan(app.getState().units))
}

export async function open(): Promise<void> {
  if (!(await mayLeave())) return
  const opened = await getDesk().open()
  if (opened.ok) await openFile(opened.value)
  else if (opened.code !== 'cancelled') tell(opened.why, 'fails')
}

export async function openRecent(id: string): Promise<void> {
  if (!(await mayLeave())) return
  const opened = await getDesk().openRecent(id)
  if (opened.ok) await openFile(opened.value)
  else if (opened.code !== 'cancelled') tell(opened.why, 'fails')
}

/** Saves to where the plan lies; asks where if it lies nowhere yet. True once it is written. */
export async function save(): Promise<boolean> {
  const { file } = app.getState()
  if (!file.id || file.readOnly || file.sample) return saveAs()
  return write((text) => getDesk().save(file.id, text))
}

export async function saveAs(): Promise<boolean> {
  const { file, plan } = app.getState()
  const name = file.name ?? `${plan.title.replace(/[^\p{L}\p{N} _-]+/gu, ' ').trim() || 'plan'}.plan.json`
  return write((text) => getDesk().saveAs(text, name, file.id))
}

type Written = Awaited<ReturnType<ReturnType<typeof getDesk>['save']>>

async function write(put: (text: string) => Promise<Written>): Promise<boolean> {
  const { plan, file } = app.getState()
  if (!(await mayWrite(plan))) return false
  const text = writePlan(plan)
  let done = await put(text)
  if (!done.ok && done.code === 'changed-on-disk') {
    const overwrite = await overwriteQuestion(done.why)
    if (overwrite === 'elsewhere') return saveAs()
    if (overwrite !== 'overwrite') return false
    done = await getDesk().save(file.id, text, { overwrite: true })
  }
  if (!done.ok) {
    if (done.code === 'no-place' || done.code === 'read-only' || done.code === 'newer-version')
      return saveElsewhere(done.why)
    if (done.code !== 'cancelled') tell(done.why, 'fails')
    return false
  }
  app.setState({ savedPlan: plan, file: fileState(done.value) })
  tell(`Saved ${done.value.name}.`)
  return true
}

/** What is written must open again: where it would not, that is told before the file is written over. */
async function mayWrite(plan: Plan): Promise<boolean> {
  const faults = planFaults(plan)
  if (faults.length === 0) return true
  const choice = await ask({
    title: 'As it is, this plan could not be opened again',
    text: faults
      .slice(0, 8)
      .map((f) => `${f.path}: ${f.message}`)
      .join('\n'),
    choices: [
      { value: 'stay', label: 'Put it right first', main: true },
      { value: 'write', label: 'Save it all the same', grave: true },
    ],
  })
  return choice === 'write'
}

const overwriteQuestion = (why: string): Promise<string | null> =>
  ask({
    title: 'The file has changed since it was opened',
    text: why,
    choices: [
      { value: 'elsewhere', label: 'Save somewhere else', main: true },
      { value: 'overwrite', label: 'Write over it', grave: true },
      { value: 'stay', label: 'Do not save' },
    ],
  })

async function saveElsewhere(why: string): Promise<boolean> {
  const choice = await ask({
    title: 'It can not be saved there',
    text: why,
    choices: [
      { value: 'elsewhere', label: 'Save somewhere else', main: true },
      { value: 'stay', label: 'Do not save' },
    ],
  })
  return choice === 'elsewhere' ? saveAs() : false
}
