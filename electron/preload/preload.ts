import { contextBridge, ipcRenderer, webUtils } from 'electron'
import { type Desk, type DeskEvent, refused, type Said } from '../../src/desk/bridge'
import { browserMemory } from '../../src/desk/browser/browser-memory'
import { CHANNEL, EVENTS, type MainVerb } from '../channels'

function ask<T>(verb: MainVerb, payload: object = {}): Promise<T> {
  return ipcRenderer.invoke(CHANNEL, verb, payload)
}

/** A file that was dropped is named by its path; only the preload can learn that path. */
async function openDropped(file: File): Promise<Said<never>> {
  const path = webUtils.getPathForFile(file)
  return path ? ask('openPath', { path }) : refused('missing', 'What was dropped is no file on this machine.')
}

const desk: Desk = {
  kind: 'electron',
  facts: () => ask('facts'),
  launchFile: () => ask('launchFile'),
  open: () => ask('open'),
  openRecent: (id) => ask('openRecent', { id }),
  openDropped,
  recent: () => ask('recent'),
  save: (id, text, options) => ask('save', { id, text, overwrite: options?.overwrite === true }),
  saveAs: (text, name, from) => ask('saveAs', { text, name, from: from ?? null }),
  statFile: (id) => ask('statFile', { id }),
  exportFile: (name, bytes) => ask('exportFile', { name, bytes }),
  pickFile: (kind) => ask('pickFile', { kind }),
  readMesh: (id, file) => ask('readMesh', { id, file }),
  keepMesh: (id, file) => ask('keepMesh', { id, name: file.name, bytes: file.bytes }),
  chooseFolder: async () => refused('no-place', 'Save the plan first: models lie beside it.'),
  journal: {
    write: (id, name, text) => ask('journalWrite', { id, name, text }),
    pending: () => ask('journalPending'),
    clear: (id) => ask('journalClear', { id }),
    drop: (entry) => ask('journalDrop', { entry }),
  },
  memory: browserMemory,
  setDocument: (title, unsaved) => void ask('setDocument', { title, unsaved }),
  setMenu: (groups) => void ask('setMenu', { groups }),
  closeNow: () => void ask('closeNow'),
  listen: (listener) => {
    const hear = (_: unknown, event: DeskEvent) => listener(event)
    ipcRenderer.on(EVENTS, hear)
    return () => ipcRenderer.off(EVENTS, hear)
  },
}

contextBridge.exposeInMainWorld('fallroomDesk', desk)
