import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { app, type BrowserWindow, crashReporter, ipcMain, Menu } from 'electron'
import type { DeskEvent, MenuGroup, OpenedFile, Said } from '../../src/desk/bridge'
import { said } from '../../src/desk/bridge'
import { BuiltFiles } from '../built-files'
import { CHANNEL, EVENTS, type MainVerb } from '../channels'
import { Host } from '../host'
import { askClose, askOpen, askSave } from './dialogs'
import { ownArguments, planAsked } from './launch'
import { menuTemplate } from './menu'
import { isOwnSender } from './policy'
import { declareProtocol, serveProtocol } from './protocol'
import { mainVerbs, type Shell } from './verbs'
import { openWindow } from './window'

const folder = dirname(fileURLToPath(import.meta.url))
const host = new Host()
let window: BrowserWindow | null = null
let launch = planAsked(ownArguments(process.argv, app.isPackaged), process.cwd())
let document = { title: 'Fallroom', unsaved: false }
let groups: MenuGroup[] = []

declareProtocol()
// Crash reports stay on this machine.
crashReporter.start({ uploadToServer: false })
if (app.requestSingleInstanceLock()) begin()
else app.quit()

function begin(): void {
  app.on('second-instance', (_event, argv, workingFolder) =>
    openFromOutside(planAsked(ownArguments(argv, app.isPackaged), workingFolder)),
  )
  app.on('open-file', (event, path) => {
    event.preventDefault()
    openFromOutside(path)
  })
  app.on('window-all-closed', () => app.quit())
  app.on('will-quit', () => void host.end())
  app.on('web-contents-created', (_event, contents) =>
    contents.setWindowOpenHandler(() => ({ action: 'deny' })),
  )
  void app.whenReady().then(open)
}

async function open(): Promise<void> {
  serveProtocol(await BuiltFiles.list(join(folder, '..', 'window')))
  const verbs = mainVerbs(host, shell())
  ipcMain.handle(CHANNEL, (event, verb: MainVerb, payload: unknown) => {
    if (!isOwnSender(event.senderFrame) || !Object.hasOwn(verbs, verb)) throw new Error('refused')
    return verbs[verb](payload)
  })
  window = openWindow(host.home, folder)
  window.on('close', (event) => guardClose(event))
  window.on('closed', () => {
    window = null
  })
  window.webContents.on('render-process-gone', reviver())
  await showMenu()
}

/** A page that died is loaded anew, and its journal offered; one that dies at once again is left alone. */
function reviver(): () => void {
  let last = Number.NEGATIVE_INFINITY
  return () => {
    const now = performance.now()
    if (now - last > 10_000) window?.webContents.reload()
    last = now
  }
}

function tell(event: DeskEvent): void {
  window?.webContents.send(EVENTS, event)
}

function openFromOutside(asked: string | null): void {
  if (!window) {
    launch = asked
    return
  }
  if (window.isMinimized()) window.restore()
  window.focus()
  if (asked) void host.openPath(asked).then((file) => tell({ kind: 'opened', file }))
}

async function launchFile(): Promise<Said<OpenedFile | null>> {
  return launch === null ? said(null) : host.openPath(launch)
}

function guardClose(event: { preventDefault(): void }): void {
  if (!document.unsaved || !window) return
  event.preventDefault()
  void askClose(window, document.title).then((choice) => {
    if (choice === 'save') tell({ kind: 'save-then-close' })
    if (choice === 'discard') void giveUpChanges()
  })
}

/** The person gave the changes up, so the next start must not offer them. */
async function giveUpChanges(): Promise<void> {
  await host.journalForget()
  closeNow()
}

function closeNow(): void {
  document = { ...document, unsaved: false }
  window?.close()
}

async function showMenu(): Promise<void> {
  const recent = await host.recent()
  const actions = {
    command: (id: string) => tell({ kind: 'command', id }),
    openRecent: (id: string) => void host.openRecent(id).then((file) => tell({ kind: 'opened', file })),
  }
  const template = menuTemplate(groups, recent.ok ? recent.value : [], actions, process.platform === 'darwin')
  Menu.setApplicationMenu(Menu.buildFromTemplate(template))
}

function shell(): Shell {
  return {
    facts: () => ({
      kind: 'electron',
      savesInPlace: true,
      version: app.getVersion(),
      platform: `${process.platform} ${process.arch}`,
      runtime: `Electron ${process.versions.electron}, Chromium ${process.versions.chrome}`,
    }),
    launchFile,
    askOpen: async (kind) => (window ? askOpen(window, kind) : null),
    askSave: async (at, name, kind) => (window ? askSave(window, at, name, kind) : null),
    setDocument: (title, unsaved) => {
      document = { title, unsaved }
      window?.setTitle(`${unsaved ? '• ' : ''}${title}`)
      window?.setDocumentEdited(unsaved)
    },
    setMenu: (asked) => {
      groups = asked
      void showMenu()
    },
    closeNow,
    filesChanged: () => void showMenu(),
  }
}
