import { type PickedFile, refused, type Said, said } from '../bridge'

const gone = refused(
  'host-gone',
  'The program behind this window does not answer. Start it again with npm start.',
)

/** Asks the host a verb. The host's own refusals come back as they are; silence is one too. */
export async function ask<T>(verb: string, payload: object): Promise<Said<T>> {
  const response = await post(verb, JSON.stringify(payload))
  return response ? ((await response.json().catch(() => gone)) as Said<T>) : gone
}

/** Asks for a file's bytes. */
export async function askBytes(verb: string, payload: object, name: string): Promise<Said<PickedFile>> {
  const response = await post(verb, JSON.stringify(payload))
  if (!response) return gone
  const raw = response.headers.get('content-type') === 'application/octet-stream'
  if (!raw) return (await response.json().catch(() => gone)) as Said<PickedFile>
  return said({ name, bytes: new Uint8Array(await response.arrayBuffer()) })
}

/** Hands a file's bytes over. */
export async function sendBytes(
  verb: string,
  query: Record<string, string>,
  bytes: Uint8Array,
): Promise<Said<string>> {
  const response = await post(`${verb}?${new URLSearchParams(query)}`, bytes as Uint8Array<ArrayBuffer>)
  return response ? ((await response.json().catch(() => gone)) as Said<string>) : gone
}

async function post(verb: string, body: BodyInit): Promise<Response | null> {
  try {
    const response = await fetch(`/desk/${verb}`, { method: 'POST', body, credentials: 'same-origin' })
    return response.ok ? response : null
  } catch {
    return null
  }
}
