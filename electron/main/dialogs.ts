import { join } from 'node:path'
import { type BrowserWindow, dialog } from 'electron'
import type { PickKind } from '../../src/desk/bridge'

const filters: Record<PickKind | 'plan', Electron.FileFilter[]> = {
  plan: [{ name: 'Fallroom plan', extensions: ['json', 'fallroom'] }],
  mesh: [{ name: 'Model', extensions: ['glb', 'gltf', 'obj', 'stl', 'ply', 'ifc'] }],
  table: [{ name: 'Table', extensions: ['csv', 'txt'] }],
  photo: [{ name: 'Photo', extensions: ['jpg', 'jpeg', 'png', 'webp'] }],
  any: [],
}

/** The path that the person chose, or null. */
export async function askOpen(window: BrowserWindow, kind: PickKind | 'plan'): Promise<string | null> {
  const chosen = await dialog.showOpenDialog(window, { properties: ['openFile'], filters: filters[kind] })
  return chosen.canceled ? null : (chosen.filePaths[0] ?? null)
}

export async function askSave(
  window: BrowserWindow,
  folder: string | null,
  name: string,
  kind: 'plan' | 'any',
): Promise<string | null> {
  const chosen = await dialog.showSaveDialog(window, {
    defaultPath: folder ? join(folder, name) : name,
    filters: filters[kind],
    properties: ['showOverwriteConfirmation', 'createDirectory'],
  })
  return chosen.canceled || !chosen.filePath ? null : chosen.filePath
}

export type CloseChoice = 'save' | 'discard' | 'stay'

/** The question before a window with unsaved changes closes. Escape stays. */
export async function askClose(window: BrowserWindow, title: string): Promise<CloseChoice> {
  const { response } = await dialog.showMessageBox(window, {
    type: 'question',
    message: `Save the changes to ${title}?`,
    detail: 'Without saving, the changes since the last save are lost.',
    buttons: ['Save', "Don't save", 'Cancel'],
    defaultId: 0,
    cancelId: 2,
    noLink: true,
  })
  return (['save', 'discard', 'stay'] as const)[response] ?? 'stay'
}
