import {
  type Desk,
  type DeskFacts,
  MAX_PLAN_BYTES,
  type OpenedFile,
  refused,
  type Said,
  said,
} from '../bridge'
import { whyNotOver } from '../peek'
import { createBrowserJournal } from './browser-journal'
import { browserMemory } from './browser-memory'
import { type LocalFile, LocalFiles } from './local-files'
import { download, pick, pickFolder } from './pickers'

/** The desk of a bare browser: files by its own pickers, or by upload and download where it has none. */
export function createBrowserDesk(): Desk {
  const files = new LocalFiles()
  guardUnload()
  return {
    kind: 'browser',
    facts: async () => browserFacts('browser'),
    launchFile: async () => said(null),
    ...localVerbs(files),
    openRecent: async () => refused('missing', 'This browser keeps no list of recent plans.'),
    recent: async () => said([]),
    journal: createBrowserJournal(),
    memory: browserMemory,
    setDocument,
    setMenu: () => {},
    closeNow,
    listen: () => () => {},
  }
}

type LocalVerbs = Pick<
  Desk,
  | 'open'
  | 'openDropped'
  | 'save'
  | 'saveAs'
  | 'statFile'
  | 'exportFile'
  | 'pickFile'
  | 'readMesh'
  | 'keepMesh'
  | 'chooseFolder'
>

/** The verbs on files that only the browser holds; the loopback desk uses them for what its host did not open. */
export function localVerbs(files: LocalFiles): LocalVerbs {
  return {
    open: async () => openPicked(files),
    openDropped: async (file) => openBlob(files, file, undefined),
    save: (id, text, options) => files.save(id, text, options?.overwrite === true),
    saveAs: (text, name, from) => files.saveAs(text, name, from ?? null),
    statFile: (id) => files.stat(id),
    exportFile: async (name, bytes, mime) => said(download(name, bytes, mime)),
    pickFile: async (kind) => {
      const picked = await pick(kind)
      if (!picked.ok) return picked
      return said({
        name: picked.value.file.name,
        bytes: new Uint8Array(await picked.value.file.arrayBuffer()),
      })
    },
    readMesh: (id, file) => files.readMesh(id, file),
    keepMesh: (id, file) => files.keepMesh(id, file),
    chooseFolder: async (id) => {
      const folder = await pickFolder()
      if (!folder.ok) return folder
      files.setFolder(id, folder.value)
      return said(folder.value.name)
    },
  }
}

async function openPicked(files: LocalFiles): Promise<Said<OpenedFile>> {
  const picked = await pick('plan')
  return picked.ok ? openBlob(files, picked.value.file, picked.value.handle) : picked
}

async function openBlob(
  files: LocalFiles,
  file: File,
  handle: LocalFile['handle'],
): Promise<Said<OpenedFile>> {
  if (file.size > MAX_PLAN_BYTES) return refused('too-large', `${file.name} is too large to be a plan.`)
  try {
    const text = await file.text()
    const ref = files.add(file.name, handle, text)
    return said({ ...ref, readOnly: whyNotOver(text) ?? ref.readOnly, text })
  } catch {
    return refused('failed', `${file.name} could not be read.`)
  }
}

export function browserFacts(kind: DeskFacts['kind']): DeskFacts {
  return {
    kind,
    savesInPlace: 'showOpenFilePicker' in window,
    version: __FALLROOM_VERSION__,
    platform: navigator.platform,
    runtime: navigator.userAgent,
  }
}

let unsavedHere = false

export function setDocument(title: string, unsaved: boolean): void {
  unsavedHere = unsaved
  document.title = `${unsaved ? '• ' : ''}${title}`
}

export function closeNow(): void {
  unsavedHere = false
  window.close()
}

/** The browser asks its own question before it closes a window with unsaved changes. */
export function guardUnload(): void {
  window.addEventListener('beforeunload', (event) => {
    if (unsavedHere) event.preventDefault()
  })
}
