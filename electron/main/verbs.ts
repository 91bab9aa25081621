import { basename, dirname } from 'node:path'
import type { z } from 'zod'
import {
  type DeskFacts,
  MAX_MESH_BYTES,
  type MenuGroup,
  type OpenedFile,
  type PickKind,
  refused,
  type Said,
  said,
} from '../../src/desk/bridge'
import type { MainVerb } from '../channels'
import { readRegular } from '../files/read-file'
import type { Host } from '../host'
import { payloadFault, payloads } from '../payloads'

/** What the verbs need of the desktop; Electron's own parts come in here, so that the verbs are tested without it. */
export interface Shell {
  facts(): DeskFacts
  launchFile(): Promise<Said<OpenedFile | null>>
  askOpen(kind: PickKind | 'plan'): Promise<string | null>
  askSave(folder: string | null, name: string, kind: 'plan' | 'any'): Promise<string | null>
  setDocument(title: string, unsaved: boolean): void
  setMenu(groups: MenuGroup[]): void
  closeNow(): void
  /** A file was opened or saved: the recent menu is out of date. */
  filesChanged(): void
}

type Verb = (payload: unknown) => Promise<unknown>

const cancelled = refused('cancelled', 'Nothing was chosen.')

/** Every verb that the window may ask Electron's main process for. There are no others. */
export function mainVerbs(host: Host, shell: Shell): Record<MainVerb, Verb> {
  const touch = async <T>(result: Promise<T>) => result.finally(() => shell.filesChanged())
  return {
    facts: parsed(payloads.none, async () => shell.facts()),
    launchFile: parsed(payloads.none, () => touch(shell.launchFile())),
    open: parsed(payloads.none, () => touch(openByDialog(host, shell))),
    openPath: parsed(payloads.openPath, ({ path }) => touch(host.openPath(path))),
    openRecent: parsed(payloads.openRecent, ({ id }) => touch(host.openRecent(id))),
    recent: parsed(payloads.none, () => host.recent()),
    save: parsed(payloads.save, ({ id, text, overwrite }) => host.save(id, text, overwrite)),
    saveAs: parsed(payloads.saveAs, (asked) => touch(saveByDialog(host, shell, asked))),
    statFile: parsed(payloads.statFile, ({ id }) => host.state(id)),
    exportFile: parsed(payloads.exportFile, ({ name, bytes }) => exportByDialog(host, shell, name, bytes)),
    pickFile: parsed(payloads.pickFile, ({ kind }) => pickByDialog(shell, kind)),
    readMesh: parsed(payloads.readMesh, ({ id, file }) => host.readMesh(id, file)),
    keepMesh: parsed(payloads.keepMesh, ({ id, name, bytes }) => host.keepMesh(id, { name, bytes })),
    journalWrite: parsed(payloads.journalWrite, (j) => host.journalWrite(j.id, j.name, j.text)),
    journalPending: parsed(payloads.none, () => host.journalPending()),
    journalClear: parsed(payloads.journalClear, ({ id }) => host.journalClear(id)),
    journalDrop: parsed(payloads.journalDrop, ({ entry }) => host.journalDrop(entry)),
    setDocument: parsed(payloads.setDocument, async (d) => shell.setDocument(d.title, d.unsaved)),
    setMenu: parsed(payloads.setMenu, async ({ groups }) => shell.setMenu(groups as MenuGroup[])),
    closeNow: parsed(payloads.none, async () => shell.closeNow()),
  }
}

function parsed<S extends z.ZodType>(schema: S, run: (payload: z.infer<S>) => Promise<unknown>): Verb {
  return async (payload) => {
    const read = schema.safeParse(payload)
    if (!read.success) return refused('bad-request', payloadFault(read.error))
    return run(read.data).catch(() =>
      refused('failed', 'That could not be done. The plan in the window is unchanged.'),
    )
  }
}

async function openByDialog(host: Host, shell: Shell): Promise<Said<OpenedFile>> {
  const path = await shell.askOpen('plan')
  return path === null ? cancelled : host.openPath(path)
}

async function saveByDialog(host: Host, shell: Shell, asked: z.infer<typeof payloads.saveAs>) {
  const old = host.files.get(asked.from)
  const path = await shell.askSave(old ? dirname(old.path) : null, basename(asked.name), 'plan')
  return path === null ? cancelled : host.saveTo(path, asked.text, asked.from)
}

async function exportByDialog(host: Host, shell: Shell, name: string, bytes: Uint8Array) {
  const path = await shell.askSave(null, basename(name), 'any')
  return path === null ? cancelled : host.exportTo(path, basename(path), bytes)
}

async function pickByDialog(shell: Shell, kind: PickKind) {
  const path = await shell.askOpen(kind)
  if (path === null) return cancelled
  const bytes = await readRegular(path, MAX_MESH_BYTES)
  return bytes.ok ? said({ name: basename(path), bytes: bytes.value }) : bytes
}
