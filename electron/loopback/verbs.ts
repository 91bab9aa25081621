import type { IncomingMessage } from 'node:http'
import type { z } from 'zod'
import {
  MAX_MESH_BYTES,
  MAX_PLAN_BYTES,
  type OpenedFile,
  refused,
  type Said,
  said,
} from '../../src/desk/bridge'
import type { Host } from '../host'
import { payloadFault, payloads } from '../payloads'
import { readBody, readJson } from './body'

/** JSON may need six characters for one of a plan's. */
const MAX_BODY = 6 * MAX_PLAN_BYTES

type Verb = (request: IncomingMessage, url: URL) => Promise<Said<unknown>>

/** The verbs that the window may ask the loopback host for, by name. There are no others. */
export function loopbackVerbs(host: Host, launch: () => Promise<Said<OpenedFile | null>>): Map<string, Verb> {
  return new Map<string, Verb>([
    ['launchFile', json(payloads.none, launch)],
    ['openRecent', json(payloads.openRecent, ({ id }) => host.openRecent(id))],
    ['recent', json(payloads.none, () => host.recent())],
    ['save', json(payloads.save, ({ id, text, overwrite }) => host.save(id, text, overwrite))],
    ['statFile', json(payloads.statFile, ({ id }) => host.state(id))],
    ['readMesh', json(payloads.readMesh, ({ id, file }) => host.readMesh(id, file))],
    ['keepMesh', (request, url) => keepMesh(host, request, url)],
    [
      'remember',
      json(payloads.remember, ({ key, value }) => host.settings.set(key, value).then(() => said(null))),
    ],
    ['journalWrite', json(payloads.journalWrite, (j) => host.journalWrite(j.id, j.name, j.text))],
    ['journalPending', json(payloads.none, () => host.journalPending())],
    ['journalClear', json(payloads.journalClear, ({ id }) => host.journalClear(id))],
    ['journalDrop', json(payloads.journalDrop, ({ entry }) => host.journalDrop(entry))],
  ])
}

function json<S extends z.ZodType>(schema: S, run: (payload: z.infer<S>) => Promise<Said<unknown>>): Verb {
  return async (request) => {
    const body = await readJson(request, MAX_BODY)
    if (!body.ok) return body
    const payload = schema.safeParse(body.value)
    return payload.success ? run(payload.data) : refused('bad-request', payloadFault(payload.error))
  }
}

/** A model's bytes come as the body itself: as JSON they would be several times as long. */
async function keepMesh(host: Host, request: IncomingMessage, url: URL): Promise<Said<string>> {
  const asked = payloads.keepMeshQuery.safeParse({
    id: url.searchParams.get('id'),
    name: url.searchParams.get('name'),
  })
  if (!asked.success) return refused('bad-request', payloadFault(asked.error))
  const bytes = await readBody(request, MAX_MESH_BYTES)
  return bytes.ok ? host.keepMesh(asked.data.id, { name: asked.data.name, bytes: bytes.value }) : bytes
}
