import type { IncomingMessage } from 'node:http'
import { refused, type Said, said } from '../../src/desk/bridge'

/** Reads a request's body up to `limit` bytes; a longer one is refused without being kept. */
export async function readBody(request: IncomingMessage, limit: number): Promise<Said<Buffer>> {
  const parts: Buffer[] = []
  let size = 0
  for await (const part of request) {
    size += (part as Buffer).length
    if (size > limit) return refused('too-large', 'That is too large to be handed over.')
    parts.push(part as Buffer)
  }
  return said(Buffer.concat(parts))
}

export async function readJson(request: IncomingMessage, limit: number): Promise<Said<unknown>> {
  const body = await readBody(request, limit)
  if (!body.ok) return body
  try {
    return said(JSON.parse(body.value.toString('utf8')))
  } catch {
    return refused('bad-request', 'The request was not understood.')
  }
}
