import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { type OpenedFile, refused, type Said, said } from '../../src/desk/bridge'
import { BuiltFiles } from '../built-files'
import { securityHeaders } from '../content-policy'
import { Host } from '../host'
import { Gate, type Refusal } from './gate'
import { Presence } from './presence'
import { loopbackVerbs } from './verbs'

export interface LoopbackOptions {
  /** The folder of the built window. */
  built: string
  /** A plan that the person named on the command line. */
  plan?: string
  /** Where the journal and the recent list are kept; absent: the person's own data folder. */
  home?: string
  /** Milliseconds without a window until the host stops by itself. */
  grace?: number
}

export interface Loopback {
  /** The address to open, once. */
  address: string
  origin: string
  /** The folder where the journal and the recent list are kept. */
  home: string
  /** Settles when the host has stopped, by itself or by `stop`. */
  stopped: Promise<void>
  stop(): Promise<void>
}

/** Serves the window and its verbs on this machine only, to the one browser that opens `address`. */
export async function startLoopback(options: LoopbackOptions): Promise<Loopback> {
  const built = await BuiltFiles.list(options.built)
  const host = new Host(options.home)
  const server = createServer()
  const port = await listen(server)
  const gate = new Gate(port)
  const stopped = new Promise<void>((resolve) => server.on('close', () => resolve()))
  const presence = new Presence(() => void stop(), options.grace)
  const verbs = loopbackVerbs(host, launcher(host, options.plan))
  const stop = () => shutDown(server, presence, host, stopped)
  server.on('request', (request: IncomingMessage, response: ServerResponse) => {
    answer({ request, response, gate, built, presence, verbs, host }).catch(() => response.destroy())
  })
  return { address: gate.address(), origin: gate.origin, home: host.home, stopped, stop }
}

interface Exchange {
  request: IncomingMessage
  response: ServerResponse
  gate: Gate
  built: BuiltFiles
  presence: Presence
  verbs: ReturnType<typeof loopbackVerbs>
  host: Host
}

async function answer(exchange: Exchange): Promise<void> {
  const { request, response, gate } = exchange
  for (const [name, value] of Object.entries(securityHeaders)) response.setHeader(name, value)
  const foreign = gate.checkSource(request)
  if (foreign) return refuse(response, foreign)
  const url = new URL(request.url ?? '/', gate.origin)
  const cookie =
    request.method === 'GET' && url.pathname === '/' && gate.exchange(url.searchParams.get('token'))
  if (cookie) {
    response.writeHead(303, { location: '/', 'set-cookie': cookie, 'cache-control': 'no-store' }).end()
    return
  }
  const stranger = gate.checkSession(request)
  if (stranger) return refuse(response, stranger)
  return route(exchange, url)
}

async function route(exchange: Exchange, url: URL): Promise<void> {
  const { request, response } = exchange
  // The raw address is asked, since parsing it has already resolved dots.
  if (/\.\.|%|\\|\/\//.test((request.url ?? '').split('?')[0] ?? '')) return refuse(response, notHere)
  if (url.pathname === '/desk/present' && request.method === 'GET') return exchange.presence.hold(response)
  const verb = url.pathname.startsWith('/desk/') ? exchange.verbs.get(url.pathname.slice(6)) : undefined
  if (verb && request.method === 'POST') return sendSaid(response, await verb(request, url).catch(verbFault))
  if (request.method !== 'GET') return refuse(response, notHere)
  return sendBuilt(exchange, url.pathname)
}

const notHere: Refusal = { status: 404, words: 'There is nothing at this address.' }

function verbFault(): Said<never> {
  return refused('failed', 'That could not be done. The plan in the window is unchanged.')
}

async function sendBuilt({ built, response, host }: Exchange, address: string): Promise<void> {
  const file = await built.read(address)
  if (!file) return refuse(response, notHere)
  const page = file.type.startsWith('text/html')
  // Names of built assets carry a hash of their content; the page itself must always be the latest.
  const keep = address.startsWith('/assets/') ? 'private, max-age=31536000, immutable' : 'no-store'
  response.writeHead(200, { 'content-type': file.type, 'cache-control': keep })
  response.end(page ? asLoopback(file.bytes.toString('utf8'), await host.settings.all()) : file.bytes)
}

/** Tells the page which desktop it stands on, and what was remembered for it. */
function asLoopback(html: string, settings: Record<string, string>): string {
  // Encoded, a preference cannot end the attribute that it stands in.
  const memory = encodeURIComponent(JSON.stringify(settings)).replace(/'/g, '%27')
  const marks = `<meta name="fallroom-desk" content="loopback" /><meta name="fallroom-memory" content="${memory}" />`
  return html.replace('<head>', () => `<head>${marks}`)
}

function sendSaid(response: ServerResponse, said: Said<unknown>): void {
  const value = said.ok ? said.value : null
  const bytes = (value as { bytes?: unknown } | null)?.bytes
  const raw = bytes instanceof Uint8Array
  response.writeHead(200, {
    'content-type': raw ? 'application/octet-stream' : 'application/json; charset=utf-8',
    'cache-control': 'no-store',
  })
  response.end(raw ? bytes : JSON.stringify(said))
}

function refuse(response: ServerResponse, { status, words }: Refusal): void {
  response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' })
  response.end(words)
}

/** The launch plan is read when the window asks for it, so that a window loaded anew shows the file as it is then. */
function launcher(host: Host, plan: string | undefined) {
  return async (): Promise<Said<OpenedFile | null>> => (plan === undefined ? said(null) : host.openPath(plan))
}

function listen(server: Server): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject)
    server.listen(0, '127.0.0.1', () => resolve((server.address() as AddressInfo).port))
  })
}

async function shutDown(
  server: Server,
  presence: Presence,
  host: Host,
  stopped: Promise<void>,
): Promise<void> {
  presence.end()
  server.close()
  server.closeAllConnections()
  await host.end()
  await stopped
}
