import type { Desk, DeskEvent, FileRef, JournalEntry, OpenedFile, RecentFile } from '../bridge'
import { browserFacts, closeNow, guardUnload, localVerbs, setDocument } from '../browser/browser-desk'
import { LOCAL, LocalFiles } from '../browser/local-files'
import { ask, askBytes, sendBytes } from './ask'
import { createLoopbackMemory } from './loopback-memory'

/**
 * The desk of a browser window on the loopback host. What the host opened (the plan that the program was started with,
 * a recent plan) it saves with a backup and reads models beside; what the person picks in the browser's own dialog
 * stays the browser's. The journal is always the host's, since it has to outlive the window.
 */
export function createLoopbackDesk(): Desk {
  const local = localVerbs(new LocalFiles())
  const listeners = new Set<(event: DeskEvent) => void>()
  guardUnload()
  beHere((event) => {
    for (const listener of listeners) listener(event)
  })
  return {
    kind: 'loopback',
    facts: async () => browserFacts('loopback'),
    launchFile: () => ask<OpenedFile | null>('launchFile', {}),
    openRecent: (id) => ask<OpenedFile>('openRecent', { id }),
    recent: () => ask<RecentFile[]>('recent', {}),
    ...local,
    ...hostVerbs(local),
    journal: hostJournal(),
    memory: createLoopbackMemory(),
    setDocument,
    setMenu: () => {},
    closeNow,
    listen: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}

type Shared = Pick<Desk, 'save' | 'saveAs' | 'statFile' | 'readMesh' | 'keepMesh'>

/** The verbs that go to the host for its own files, and stay in the browser for the others. */
function hostVerbs(local: Shared): Shared {
  return {
    save: (id, text, options) =>
      isLocal(id)
        ? local.save(id, text, options)
        : ask<FileRef>('save', { id, text, overwrite: options?.overwrite === true }),
    saveAs: async (text, name, from) => {
      const saved = await local.saveAs(text, name, from)
      // What was kept under the old name is in the new file now.
      if (saved.ok && !isLocal(from ?? null)) await ask<null>('journalClear', { id: from })
      return saved
    },
    statFile: (id) => (isLocal(id) ? local.statFile(id) : ask('statFile', { id })),
    readMesh: (id, file) =>
      isLocal(id) ? local.readMesh(id, file) : askBytes('readMesh', { id, file }, file),
    keepMesh: (id, file) =>
      isLocal(id)
        ? local.keepMesh(id, file)
        : sendBytes('keepMesh', { id: id ?? '', name: file.name }, file.bytes),
  }
}

function hostJournal(): Desk['journal'] {
  return {
    write: (id, name, text) => ask<null>('journalWrite', { id: hostId(id), name, text }),
    pending: () => ask<JournalEntry[]>('journalPending', {}),
    clear: (id) => ask<null>('journalClear', { id: hostId(id) }),
    drop: (entry) => ask<null>('journalDrop', { entry }),
  }
}

function isLocal(id: string | null): boolean {
  return id === null || id.startsWith(LOCAL)
}

function hostId(id: string | null): string | null {
  return isLocal(id) ? null : id
}

/** Holds the connection by which the host knows that its window lives, and tells when the host is gone. */
function beHere(tell: (event: DeskEvent) => void): void {
  const source = new EventSource('/desk/present')
  let told = false
  source.addEventListener('open', () => {
    told = false
  })
  source.addEventListener('error', () => {
    if (told) return
    told = true
    const why =
      'The program behind this window has stopped. Save your plan as a download, then start it again.'
    tell({ kind: 'host-gone', why })
  })
}
