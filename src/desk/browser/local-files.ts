import {
  type FileRef,
  type FileState,
  MAX_MESH_BYTES,
  type PickedFile,
  refused,
  type Said,
  said,
} from '../bridge'
import { relativeParts } from '../mesh-path'
import { whyNotOver } from '../peek'
import { download, type Folder, pickers, pickFault, planTypes } from './pickers'

export interface LocalFile {
  name: string
  handle: FileSystemFileHandle | undefined
  /** What the file held when it was opened or last saved here. */
  lastText: string
}

/** Ids of these files start with this, so that they are told from files of a host. */
export const LOCAL = 'local:'

/** Files that only the browser holds, by handle where it has the File System Access API. */
export class LocalFiles {
  private files = new Map<string, LocalFile>()
  private folders = new Map<string | null, Folder>()
  private meshes = new Map<string, Uint8Array>()

  add(name: string, handle: FileSystemFileHandle | undefined, text: string): FileRef {
    const id = `${LOCAL}${crypto.randomUUID()}`
    this.files.set(id, { name, handle, lastText: text })
    return this.ref(id, name)
  }

  setFolder(id: string | null, folder: Folder): void {
    this.folders.set(id, folder)
  }

  async save(id: string | null, text: string, overwrite: boolean): Promise<Said<FileRef>> {
    const file = id === null ? undefined : this.files.get(id)
    if (id === null || !file?.handle)
      return refused('no-place', 'This plan has no place yet: save it as a file.')
    const state = await this.stat(id)
    if (state.ok && state.value.readOnly) return refused('newer-version', state.value.readOnly)
    if (state.ok && state.value.changed && !overwrite) {
      return refused('changed-on-disk', `${file.name} was changed by someone else since it was opened here.`)
    }
    const written = await write(file.handle, text)
    if (!written.ok) return written
    file.lastText = text
    return said(this.ref(id, file.name))
  }

  async saveAs(text: string, name: string, from: string | null): Promise<Said<FileRef>> {
    const { showSaveFilePicker } = pickers()
    if (!showSaveFilePicker) {
      download(name, new TextEncoder().encode(text), 'application/json')
      return said(this.add(name, undefined, text))
    }
    try {
      const handle = await showSaveFilePicker.call(window, { ...planTypes(), suggestedName: name })
      const why = whyNotOver(await (await handle.getFile()).text())
      if (why) return refused('newer-version', why)
      const written = await write(handle, text)
      if (!written.ok) return written
      const ref = this.add(handle.name, handle, text)
      const folder = this.folders.get(from)
      if (folder) this.folders.set(ref.id, folder)
      return said(ref)
    } catch (error) {
      return pickFault(error)
    }
  }

  async stat(id: string): Promise<Said<FileState>> {
    const file = this.files.get(id)
    if (!file?.handle) return said({ exists: false, changed: false, readOnly: null })
    try {
      const text = await (await file.handle.getFile()).text()
      return said({ exists: true, changed: text !== file.lastText, readOnly: whyNotOver(text) })
    } catch {
      return said({ exists: false, changed: true, readOnly: null })
    }
  }

  async readMesh(id: string | null, file: string): Promise<Said<PickedFile>> {
    const parts = relativeParts(file)
    if (!parts) return refused('outside', `The model "${file}" does not lie beside the plan.`)
    const kept = this.meshes.get(parts.join('/'))
    if (kept) return said({ name: file, bytes: kept })
    const folder = this.folders.get(id)
    if (!folder)
      return refused('needs-folder', `To read "${file}", point to the folder that the plan lies in.`)
    const found = await findIn(folder, parts)
    if (!found) return refused('missing', `The model "${file}" is not in ${folder.name}.`)
    if (found.size > MAX_MESH_BYTES) return refused('too-large', `The model "${file}" is too large to read.`)
    return said({ name: file, bytes: new Uint8Array(await found.arrayBuffer()) })
  }

  /** A browser may not write beside the plan: the model is kept for this window, and handed out as a download. */
  async keepMesh(_id: string | null, file: PickedFile): Promise<Said<string>> {
    if (relativeParts(file.name)?.length !== 1)
      return refused('bad-request', 'That is no file name for a model.')
    this.meshes.set(file.name, file.bytes)
    return said(file.name)
  }

  private ref(id: string, name: string): FileRef {
    return { id, name, place: '', readOnly: null }
  }
}

/** `createWritable` writes beside the file and swaps on close, so a failure leaves the old file whole. */
async function write(handle: FileSystemFileHandle, text: string): Promise<Said<null>> {
  try {
    const stream = await handle.createWritable()
    await stream.write(text)
    await stream.close()
    return said(null)
  } catch (error) {
    const name = error instanceof DOMException ? error.name : ''
    if (name === 'QuotaExceededError') return refused('disk-full', 'The disk is full. Nothing was changed.')
    if (name === 'NotAllowedError') return refused('read-only', 'Writing to this file was not allowed.')
    return refused('failed', 'The file could not be written. The old one is unchanged.')
  }
}

async function findIn(folder: Folder, parts: string[]): Promise<File | null> {
  if (folder.files) {
    const path = [folder.name, ...parts].join('/')
    return folder.files.find((file) => file.webkitRelativePath === path) ?? null
  }
  try {
    let at = folder.handle
    for (const part of parts.slice(0, -1)) at = await at?.getDirectoryHandle(part)
    return (await (await at?.getFileHandle(parts.at(-1) ?? ''))?.getFile()) ?? null
  } catch {
    return null
  }
}
