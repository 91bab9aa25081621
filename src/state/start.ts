/** What happens when the window opens: looks, keys, study, journal, and the plan that it was opened with. */
import type { DeskEvent } from '../desk/bridge'
import { getDesk } from '../desk/desk'
import { tell } from './ask'
import { run } from './commands/command'
import { startKeys } from './commands/keys'
import { command } from './commands/registry'
import { startDeskMenu } from './desk-menu'
import { startErrorLog } from './files/diagnostic'
import { mayLeave, openFile, save } from './files/document'
import { offerRestore, startJournal } from './files/journal'
import { startKeepingSight } from './files/kept-sight'
import { showSample } from './files/samples'
import { recall } from './memory'
import { startModels } from './models/load'
import { loadOwnParts } from './parts/own-parts'
import { pruneWindow } from './prune'
import { app } from './store'
import { startStudy } from './study/study-client'
import { startTheme } from './theme-choice'

export async function startUp(): Promise<void> {
  startErrorLog()
  startTheme()
  loadOwnParts()
  startKeys()
  startModels()
  startStudy()
  startJournal()
  startKeepingSight()
  startDeskMenu()
  app.subscribe((state, before) => {
    if (state.plan !== before.plan) pruneWindow()
  })
  window.fallroom = { ...window.fallroom, store: app }
  getDesk().listen((event) => void heard(event))
  warnBeforeLeaving()
  await firstPlan()
}

/** The file it was started with, else unsaved work from before, else the finished sample with its hints. */
async function firstPlan(): Promise<void> {
  const launch = await getDesk().launchFile()
  if (!launch.ok) tell(launch.why, 'fails')
  if (launch.ok && launch.value) {
    if (await openFile(launch.value)) {
      await offerRestore(launch.value.place)
      return
    }
  }
  if (await offerRestore()) return
  await showSample()
  if (recall('hint') !== 'closed') app.setState({ hintStep: 0 })
}

async function heard(event: DeskEvent): Promise<void> {
  switch (event.kind) {
    case 'opened':
      if (!event.file.ok) tell(event.file.why, 'fails')
      else if (await mayLeave()) await openFile(event.file.value)
      return
    case 'command':
      run(command(event.id))
      return
    case 'save-then-close':
      if (await save()) getDesk().closeNow()
      return
    case 'host-gone':
      tell(event.why, 'fails')
  }
}

/** A browser asks by itself before a page with unsaved work is closed. */
function warnBeforeLeaving(): void {
  window.addEventListener('beforeunload', (e) => {
    const { plan, savedPlan } = app.getState()
    if (plan !== savedPlan && getDesk().kind !== 'electron') e.preventDefault()
  })
}
