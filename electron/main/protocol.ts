import { protocol } from 'electron'
import type { BuiltFiles } from '../built-files'
import { securityHeaders } from '../content-policy'
import { isOwnAddress, SCHEME } from './policy'

/** Has to be called before the app is ready: the page is a secure origin of its own, with workers and fetch. */
export function declareProtocol(): void {
  const privileges = { standard: true, secure: true, supportFetchAPI: true, codeCache: true, stream: true }
  protocol.registerSchemesAsPrivileged([{ scheme: SCHEME, privileges }])
}

export function serveProtocol(built: BuiltFiles): void {
  protocol.handle(SCHEME, (request) => answer(built, request))
}

/** Serves the built window and nothing else. */
async function answer(built: BuiltFiles, request: Request): Promise<Response> {
  const file = isOwnAddress(request.url) ? await built.read(new URL(request.url).pathname) : null
  if (!file || request.method !== 'GET')
    return new Response('Not here', { status: 404, headers: securityHeaders })
  return new Response(new Uint8Array(file.bytes), {
    headers: { ...securityHeaders, 'content-type': file.type },
  })
}
