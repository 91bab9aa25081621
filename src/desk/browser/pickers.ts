import { type PickKind, refused, type Said, said } from '../bridge'

/** The parts of the File System Access API that TypeScript's own DOM types leave out. */
export interface PickerWindow {
  showOpenFilePicker?: (options: PickerOptions) => Promise<FileSystemFileHandle[]>
  showSaveFilePicker?: (options: PickerOptions & { suggestedName: string }) => Promise<FileSystemFileHandle>
  showDirectoryPicker?: (options: { mode: 'read' | 'readwrite' }) => Promise<FileSystemDirectoryHandle>
}

interface PickerOptions {
  types?: { description: string; accept: Record<string, string[]> }[]
}

export interface Picked {
  file: File
  handle: FileSystemFileHandle | undefined
}

/** A folder that the person chose: by handle, or as the list of files of an upload. */
export interface Folder {
  name: string
  handle?: FileSystemDirectoryHandle
  files?: File[]
}

const endings: Record<PickKind | 'plan', string[]> = {
  plan: ['.json', '.fallroom'],
  mesh: ['.glb', '.gltf', '.obj', '.stl', '.ply', '.ifc'],
  table: ['.csv', '.txt'],
  photo: ['.jpg', '.jpeg', '.png', '.webp'],
  any: [],
}

const cancelled = refused('cancelled', 'Nothing was chosen.')

export function pickers(): PickerWindow {
  return window as unknown as PickerWindow
}

export function planTypes(): PickerOptions {
  return { types: [{ description: 'Fallroom plan', accept: { 'application/json': endings.plan } }] }
}

/** Asks the person for one file. */
export async function pick(kind: PickKind | 'plan'): Promise<Said<Picked>> {
  const { showOpenFilePicker } = pickers()
  if (kind !== 'plan' || !showOpenFilePicker) return pickByInput(endings[kind])
  try {
    const [handle] = await showOpenFilePicker.call(window, planTypes())
    return handle ? said({ file: await handle.getFile(), handle }) : cancelled
  } catch (error) {
    return pickFault(error)
  }
}

/** An aborted picker is a choice, not a fault. */
export function pickFault(error: unknown): Said<never> {
  if (error instanceof DOMException && error.name === 'AbortError') return cancelled
  return refused('failed', 'The browser did not let this file be opened.')
}

function pickByInput(accept: string[]): Promise<Said<Picked>> {
  return new Promise((resolve) => {
    const input = document.createElement('input')
    input.type = 'file'
    input.accept = accept.join(',')
    input.addEventListener('change', () => {
      const file = input.files?.[0]
      resolve(file ? said({ file, handle: undefined }) : cancelled)
    })
    input.addEventListener('cancel', () => resolve(cancelled))
    input.click()
  })
}

/** Asks for the folder that the plan lies in. */
export async function pickFolder(): Promise<Said<Folder>> {
  const { showDirectoryPicker } = pickers()
  if (!showDirectoryPicker) return folderByInput()
  try {
    const handle = await showDirectoryPicker.call(window, { mode: 'read' })
    return said({ name: handle.name, handle })
  } catch (error) {
    return pickFault(error)
  }
}

function folderByInput(): Promise<Said<Folder>> {
  return new Promise((resolve) => {
    const input = document.createElement('input')
    input.type = 'file'
    input.webkitdirectory = true
    input.addEventListener('change', () => {
      const files = [...(input.files ?? [])]
      const name = files[0]?.webkitRelativePath.split('/')[0] ?? 'folder'
      resolve(files.length > 0 ? said({ name, files }) : cancelled)
    })
    input.addEventListener('cancel', () => resolve(cancelled))
    input.click()
  })
}

/** Hands a file to the browser's download folder. Returns its name. */
export function download(name: string, bytes: Uint8Array, mime: string): string {
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: mime }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
  return name
}
