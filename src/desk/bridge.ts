/**
 * The one bridge between the window and the desktop under it. Named verbs only: there is no "read this path" and no
 * "run this". Nothing here throws; whatever goes wrong comes back as data in words for the person at the desk.
 */

/** Why a verb did not do what it was asked. `why` is for people; `code` is for the window's next question. */
export type DeskCode =
  | 'cancelled'
  | 'no-place'
  | 'missing'
  | 'not-a-file'
  | 'too-large'
  | 'read-only'
  | 'disk-full'
  | 'changed-on-disk'
  | 'newer-version'
  | 'outside'
  | 'needs-folder'
  | 'bad-request'
  | 'host-gone'
  | 'failed'

export type Said<T> = { ok: true; value: T } | { ok: false; code: DeskCode; why: string }

/** A file that the person opened or saved. `id` stands for it in every later verb; it is no path. */
export interface FileRef {
  id: string
  /** File name without its folder. */
  name: string
  /** Full path where the desktop knows it, otherwise empty. For reading only. */
  place: string
  /** Why it cannot be saved to where it lies, or null. */
  readOnly: string | null
}

/** `text` is not yet a plan: hand it to `readPlan`, and keep the open plan if that refuses it. */
export interface OpenedFile extends FileRef {
  text: string
}

export interface PickedFile {
  name: string
  bytes: Uint8Array
}

export type PickKind = 'mesh' | 'table' | 'photo' | 'any'

/** What the journal holds of one document that was not saved before the program ended. */
export interface JournalEntry {
  /** Names this entry in `journal.drop`. */
  entry: string
  name: string
  /** ISO 8601, when it was written. */
  at: string
  text: string
  /** The file it belongs to, ready for `save`; null if it never had one. */
  file: FileRef | null
  /** True if the file on disk was changed by someone else after this entry's plan was opened. */
  fileChanged: boolean
}

export interface Journal {
  /** Keeps the unsaved text of a document (`id` null: not saved anywhere yet). Survives a kill at any moment. */
  write(id: string | null, name: string, text: string): Promise<Said<null>>
  /** Entries left behind by a program that ended without saving; empty when there is nothing to choose. */
  pending(): Promise<Said<JournalEntry[]>>
  /** The document is saved, or its changes are given up: forget its entry. */
  clear(id: string | null): Promise<Said<null>>
  /** The person did not want this pending entry. */
  drop(entry: string): Promise<Said<null>>
}

export interface RecentFile {
  id: string
  name: string
  place: string
  /** ISO 8601 */
  at: string
}

/** `changed` means somebody else changed it since it was opened or last saved here. */
export interface FileState {
  exists: boolean
  changed: boolean
  readOnly: string | null
}

export interface MenuItem {
  id: string
  label: string
  shortcut?: string
  enabled: boolean
}

export interface MenuGroup {
  label: string
  items: MenuItem[]
}

/** What the desktop tells the window unasked. */
export type DeskEvent =
  /** The person opened a file from outside: second start, file association, recent menu, a file dropped on the icon. */
  | { kind: 'opened'; file: Said<OpenedFile> }
  /** A native menu entry was chosen; `id` is the command's id. */
  | { kind: 'command'; id: string }
  /** The person chose to save before closing: save, then call `closeNow`. */
  | { kind: 'save-then-close' }
  /** The loopback host stopped answering; the plan in the window can still be exported as a download. */
  | { kind: 'host-gone'; why: string }

export interface DeskFacts {
  kind: 'electron' | 'loopback' | 'browser'
  /** True if a file that was opened by dialog can be saved to where it lies. */
  savesInPlace: boolean
  version: string
  platform: string
  runtime: string
}

/** Small preferences of this machine. */
export interface Memory {
  get(key: string): string | null
  set(key: string, value: string): void
}

export interface Desk {
  readonly kind: DeskFacts['kind']
  facts(): Promise<DeskFacts>
  /** The file that the program was started with, or null. */
  launchFile(): Promise<Said<OpenedFile | null>>
  /** Asks the person for a plan file. */
  open(): Promise<Said<OpenedFile>>
  openRecent(id: string): Promise<Said<OpenedFile>>
  /** A file that was dragged onto the window. */
  openDropped(file: File): Promise<Said<OpenedFile>>
  recent(): Promise<Said<RecentFile[]>>
  /**
   * Writes the file `id`: atomically, with the last good copy kept beside it as .bak where the desktop owns the disk.
   * Refuses with `changed-on-disk` unless `overwrite`, and always refuses over a plan of a newer version.
   */
  save(id: string | null, text: string, options?: { overwrite?: boolean }): Promise<Said<FileRef>>
  /** Asks where, then writes. A copy that went to the download folder has an id that says `no-place` to `save`. */
  saveAs(text: string, suggestedName: string, from?: string | null): Promise<Said<FileRef>>
  statFile(id: string): Promise<Said<FileState>>
  /** Papers, drawings, tables: asks where on the desktops that can, downloads on the others. Value: the file's name. */
  exportFile(name: string, bytes: Uint8Array, mime: string): Promise<Said<string>>
  /** Asks for a file to import. Only its name and bytes come back. */
  pickFile(kind: PickKind): Promise<Said<PickedFile>>
  /** A model file that a plan names, by its path relative to the plan's folder. `needs-folder`: call `chooseFolder`. */
  readMesh(id: string | null, file: string): Promise<Said<PickedFile>>
  /** Puts a model beside the plan, never over a different file of that name. Value: the name it got, for the plan. */
  keepMesh(id: string | null, file: PickedFile): Promise<Said<string>>
  /** Where a browser opened the plan without its folder: asks the person for that folder. Value: its name. */
  chooseFolder(id: string | null): Promise<Said<string>>
  readonly journal: Journal
  readonly memory: Memory
  /** Window title, and whether closing has to ask first. */
  setDocument(title: string, unsaved: boolean): void
  /** Native menus, where the desktop has them. */
  setMenu(groups: MenuGroup[]): void
  /** Closes without asking again, after `save-then-close`. */
  closeNow(): void
  /** Returns the function that stops listening. */
  listen(listener: (event: DeskEvent) => void): () => void
}

export const MAX_PLAN_BYTES = 64 * 1024 * 1024
export const MAX_MESH_BYTES = 512 * 1024 * 1024

export function said<T>(value: T): Said<T> {
  return { ok: true, value }
}

export function refused(code: DeskCode, why: string): { ok: false; code: DeskCode; why: string } {
  return { ok: false, code, why }
}
