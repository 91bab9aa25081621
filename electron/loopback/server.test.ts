import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { request as httpRequest, type IncomingHttpHeaders } from 'node:http'
import { connect } from 'node:net'
import { networkInterfaces, tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Loopback, startLoopback } from './server'

const plan = JSON.stringify({ format: 'fallroom-plan', version: 1, title: 'one' })

let folder: string
let host: Loopback
let port: number
let cookie: string

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'fallroom-'))
  await mkdir(join(folder, 'built', 'assets'), { recursive: true })
  await mkdir(join(folder, 'job'))
  await writeFile(join(folder, 'built', 'index.html'), '<html><head></head></html>')
  await writeFile(join(folder, 'built', 'assets', 'a-1.js'), 'let a')
  await writeFile(join(folder, 'built', 'assets', 'notes.secret'), 'not for serving')
  await writeFile(join(folder, 'secret.glb'), 'secret')
  await writeFile(join(folder, 'job', 'plan.json'), plan)
  await writeFile(join(folder, 'job', 'lift.glb'), Buffer.from([1, 2, 255]))
  host = await startLoopback({
    built: join(folder, 'built'),
    plan: join(folder, 'job', 'plan.json'),
    home: join(folder, 'home'),
  })
  port = Number(new URL(host.origin).port)
  cookie = await enter()
})
afterAll(async () => {
  await host.stop()
  await rm(folder, { recursive: true, force: true })
})

interface Answer {
  status: number
  headers: IncomingHttpHeaders
  body: Buffer
}

interface Asked {
  method?: string
  headers?: Record<string, string>
  body?: string | Buffer
}

/** A request as written: unlike fetch it leaves path and Host alone. */
function raw(path: string, { method = 'GET', headers = {}, body }: Asked = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = httpRequest(
      { host: '127.0.0.1', port, path, method, headers, agent: false },
      async (answer) => {
        const parts: Buffer[] = []
        for await (const part of answer) parts.push(part)
        resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body: Buffer.concat(parts) })
      },
    )
    sent.on('error', reject)
    sent.end(body)
  })
}

async function enter(): Promise<string> {
  const { search } = new URL(host.address)
  const first = await raw(`/${search}`)
  expect(first.status).toBe(303)
  const [set = ''] = first.headers['set-cookie'] ?? []
  expect(set).toMatch(/; HttpOnly; SameSite=Strict; Path=\/$/)
  return set.split(';')[0] ?? ''
}

const get = (path: string, headers = {}) => raw(path, { headers: { cookie, ...headers } })
const post = (verb: string, payload: unknown, headers = {}) =>
  raw(`/desk/${verb}`, {
    method: 'POST',
    headers: { cookie, origin: host.origin, ...headers },
    body: typeof payload === 'string' ? payload : JSON.stringify(payload),
  })
const said = async (verb: string, payload: unknown) => JSON.parse((await post(verb, payload)).body.toString())

describe('who is let in', () => {
  it('nobody without the cookie', async () => {
    for (const path of ['/', '/index.html', '/assets/a-1.js', '/desk/present', '/nothing']) {
      expect((await raw(path)).status).toBe(403)
    }
    const answer = await raw('/desk/recent', { method: 'POST', headers: { origin: host.origin }, body: '{}' })
    expect(answer.status).toBe(403)
  })

  it('nobody with the token a second time, a wrong token or a wrong cookie', async () => {
    expect((await raw(`/${new URL(host.address).search}`)).status).toBe(403)
    expect((await raw('/?token=null')).status).toBe(403)
    expect((await raw('/?token=')).status).toBe(403)
    const name = cookie.split('=')[0]
    for (const value of ['', 'x', `${cookie.split('=')[1]}x`]) {
      expect((await raw('/', { headers: { cookie: `${name}=${value}` } })).status).toBe(403)
    }
  })

  it.each(['localhost', 'evil.example', '127.0.0.1', '127.0.0.1:1', '127.0.0.1.evil.example'])(
    'nobody who calls this machine %j',
    async (name) => {
      const withPort = name === 'localhost' || name.includes('evil') ? `${name}:${port}` : name
      expect((await get('/', { host: withPort })).status).toBe(421)
      expect((await post('recent', {}, { host: withPort })).status).toBe(421)
    },
  )

  it.each(['http://evil.example', 'null', 'https://127.0.0.1', 'http://127.0.0.1:1', 'http://localhost'])(
    'no page from %s',
    async (origin) => {
      expect((await get('/', { origin })).status).toBe(403)
      expect((await post('recent', {}, { origin })).status).toBe(403)
    },
  )

  it('no verb without an origin, by another method, or of another name', async () => {
    expect((await raw('/desk/recent', { method: 'POST', headers: { cookie }, body: '{}' })).status).toBe(403)
    expect((await get('/desk/recent')).status).toBe(404)
    for (const verb of ['constructor', '__proto__', 'openPath', 'exec', '']) {
      expect((await post(verb, {})).status).toBe(404)
    }
    for (const method of ['PUT', 'DELETE', 'OPTIONS', 'PATCH']) {
      const answer = await raw('/', { method, headers: { cookie, origin: host.origin } })
      expect(answer.status).toBe(404)
    }
  })

  it('no other machine: the port is bound to 127.0.0.1 only', async () => {
    const others = Object.values(networkInterfaces()).flatMap((all) => all ?? [])
    const addresses = others.filter((one) => one.family === 'IPv4' && !one.internal).map((one) => one.address)
    for (const address of [...addresses, '127.0.0.2']) expect(await reaches(address)).toBe(false)
    expect(await reaches('127.0.0.1')).toBe(true)
  })
})

function reaches(address: string): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect({ host: address, port, timeout: 2000 })
    const end = (reached: boolean) => {
      socket.destroy()
      resolve(reached)
    }
    socket.on('connect', () => end(true))
    socket.on('error', () => end(false))
    socket.on('timeout', () => end(false))
  })
}

describe('what is served', () => {
  it('the page, marked and with its policy', async () => {
    const answer = await get('/')
    expect(answer.status).toBe(200)
    expect(answer.body.toString()).toContain('<meta name="fallroom-desk" content="loopback" />')
    const policy = answer.headers['content-security-policy']
    expect(policy).toContain("default-src 'none'")
    expect(policy).not.toContain("'unsafe-eval'")
    expect(policy).not.toMatch(/script-src[^;]*unsafe-inline/)
    expect(answer.headers['x-content-type-options']).toBe('nosniff')
    expect(answer.headers['cache-control']).toBe('no-store')
  })

  it('what it was asked to remember, whatever it is', async () => {
    const value = `"><script>'$&\u2028`
    expect(await said('remember', { key: 'theme', value })).toMatchObject({ ok: true })
    const page = (await get('/')).body.toString()
    expect(page).not.toContain('<script>')
    const [, brought = ''] = page.match(/name="fallroom-memory" content="([^"]*)"/) ?? []
    expect(JSON.parse(decodeURIComponent(brought))).toEqual({ theme: value })
  })

  it('the built assets', async () => {
    const answer = await get('/assets/a-1.js')
    expect(answer.headers['content-type']).toContain('text/javascript')
    expect(answer.body.toString()).toBe('let a')
  })

  it.each([
    '/assets/',
    '/assets',
    '/assets/notes.secret',
    '/../secret.glb',
    '/assets/../../secret.glb',
    '/..%2fsecret.glb',
    '/%2e%2e/secret.glb',
    '/%2e%2e%2fjob%2fplan.json',
    '/..\\secret.glb',
    '/%5c..%5csecret.glb',
    '//etc/passwd',
    '/assets//a-1.js',
    '/assets/%61-1.js',
    '/assets/a-1.js%00.html',
    '/....//secret.glb',
    '/job/plan.json',
    '/plan.json',
    '/etc/passwd',
    '/desk/../assets/a-1.js',
  ])('nothing at %s', async (path) => {
    const answer = await get(path)
    expect(answer.status).toBe(404)
    expect(answer.body.toString()).toBe('There is nothing at this address.')
  })
})

describe('the verbs', () => {
  it('open the launch plan, save it and read models beside it, and nothing else', async () => {
    const opened = await said('launchFile', {})
    expect(opened).toMatchObject({ ok: true, value: { name: 'plan.json', text: plan } })
    const { id } = opened.value
    const model = await post('readMesh', { id, file: 'lift.glb' })
    expect(model.headers['content-type']).toBe('application/octet-stream')
    expect([...model.body]).toEqual([1, 2, 255])
    for (const file of ['../secret.glb', '/etc/passwd', '..%2fsecret.glb', join(folder, 'secret.glb')]) {
      const answer = await said('readMesh', { id, file })
      expect(answer.ok).toBe(false)
      expect(['outside', 'missing']).toContain(answer.code)
    }
    const text = plan.replace('one', 'two')
    expect(await said('save', { id, text, overwrite: false })).toMatchObject({ ok: true })
    expect(await readFile(join(folder, 'job', 'plan.json'), 'utf8')).toBe(text)
  })

  it('keep a model whose bytes are the body', async () => {
    const { id } = (await said('launchFile', {})).value
    const headers = { cookie, origin: host.origin }
    const path = `/desk/keepMesh?${new URLSearchParams({ id, name: 'crane.stl' })}`
    const answer = await raw(path, { method: 'POST', headers, body: Buffer.from([0, 255]) })
    expect(JSON.parse(answer.body.toString())).toEqual({ ok: true, value: 'crane.stl' })
    expect([...(await readFile(join(folder, 'job', 'crane.stl')))]).toEqual([0, 255])
    const outside = `/desk/keepMesh?${new URLSearchParams({ id, name: '../crane.stl' })}`
    const refusal = await raw(outside, { method: 'POST', headers, body: 'x' })
    expect(JSON.parse(refusal.body.toString())).toMatchObject({ ok: false, code: 'bad-request' })
  })

  it.each([
    ['save', 'not json'],
    ['save', ''],
    ['save', '[]'],
    ['save', { id: 1, text: 'x', overwrite: false }],
    ['save', { id: '../x', text: plan }],
    ['save', { id: null, text: plan, overwrite: false, path: '/etc/x' }],
    ['readMesh', { id: null }],
    ['journalWrite', { id: null, name: 'x'.repeat(300), text: '' }],
    ['journalDrop', { entry: {} }],
    ['recent', { more: 1 }],
    ['recent', '{"__proto__":{"a":1}}'],
  ])('refuse a payload that is not theirs: %s %j', async (verb, payload) => {
    expect(await said(verb, payload)).toMatchObject({ ok: false, code: 'bad-request' })
  })

  it('do nothing for paths where ids are wanted', async () => {
    for (const id of [join(folder, 'job', 'plan.json'), '/etc/passwd', '__proto__', 'constructor']) {
      expect(await said('save', { id, text: plan, overwrite: true })).toMatchObject({ code: 'no-place' })
      expect(await said('readMesh', { id, file: 'lift.glb' })).toMatchObject({ code: 'no-place' })
      expect(await said('openRecent', { id })).toMatchObject({ code: 'missing' })
    }
  })
})

describe('its life', () => {
  it('ends when the window has gone', async () => {
    const other = await startLoopback({
      built: join(folder, 'built'),
      home: join(folder, 'home-2'),
      grace: 50,
    })
    const window = await hold(other)
    window.close()
    await other.stopped
    await expect(fetch(other.origin)).rejects.toThrow()
  })
})

/** Opens the window's connection, as the page does. */
async function hold(other: Loopback) {
  const entered = await fetch(other.address, { redirect: 'manual' })
  const cookie = entered.headers.getSetCookie()[0]?.split(';')[0] ?? ''
  const gone = new AbortController()
  await fetch(`${other.origin}/desk/present`, { headers: { cookie }, signal: gone.signal })
  return { close: () => gone.abort() }
}
