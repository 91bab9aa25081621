import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'

type Handler = (event: { senderFrame: unknown }, verb: string, payload: unknown) => unknown
type Listener = (...args: never[]) => unknown

/** Stands in for Electron: remembers what was asked of it. */
const fake = vi.hoisted(() => {
  const on = new Map<string, Listener>()
  const page = new Map<string, Listener>()
  const handlers = new Map<string, Handler>()
  const state = {
    openHandler: null as null | (() => { action: string }),
    options: {} as Record<string, unknown>,
  }
  const session = {
    setPermissionRequestHandler: vi.fn(),
    setPermissionCheckHandler: vi.fn(),
    setDevicePermissionHandler: vi.fn(),
    webRequest: { onBeforeRequest: vi.fn() },
  }
  const send = vi.fn()
  const choose = { open: vi.fn(), save: vi.fn(), message: vi.fn() }
  const windowCalls = { close: vi.fn(), loadURL: vi.fn(async () => {}), focus: vi.fn() }
  return {
    on,
    page,
    handlers,
    state,
    session,
    send,
    choose,
    windowCalls,
    windowOn: new Map<string, Listener>(),
  }
})

vi.mock('electron', () => {
  class BrowserWindow {
    webContents = {
      session: fake.session,
      on: (name: string, run: Listener) => fake.page.set(name, run),
      setWindowOpenHandler: (run: () => { action: string }) => {
        fake.state.openHandler = run
      },
      send: fake.send,
      reload: vi.fn(),
    }
    constructor(options: Record<string, unknown>) {
      fake.state.options = options
    }
    on = (name: string, run: Listener) => {
      const before = fake.windowOn.get(name)
      fake.windowOn.set(name, (...args) => {
        before?.(...args)
        run(...args)
      })
    }
    once = () => {}
    maximize = () => {}
    setTitle = () => {}
    setDocumentEdited = () => {}
    isMinimized = () => false
    isMaximized = () => false
    getNormalBounds = () => ({ x: 0, y: 0, width: 1000, height: 800 })
    focus = fake.windowCalls.focus
    close = fake.windowCalls.close
    loadURL = fake.windowCalls.loadURL
  }
  return {
    BrowserWindow,
    app: {
      isPackaged: false,
      requestSingleInstanceLock: () => true,
      whenReady: async () => {},
      on: (name: string, run: Listener) => fake.on.set(name, run),
      quit: vi.fn(),
      getVersion: () => '0.1.0',
    },
    crashReporter: { start: vi.fn() },
    dialog: {
      showOpenDialog: fake.choose.open,
      showSaveDialog: fake.choose.save,
      showMessageBox: fake.choose.message,
    },
    ipcMain: { handle: (channel: string, run: Handler) => fake.handlers.set(channel, run) },
    Menu: { setApplicationMenu: vi.fn(), buildFromTemplate: (template: unknown) => template },
    protocol: { registerSchemesAsPrivileged: vi.fn(), handle: vi.fn() },
    screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] },
  }
})
vi.mock('../built-files', () => ({ BuiltFiles: { list: async () => ({}) } }))

const text = (title: string) => JSON.stringify({ format: 'fallroom-plan', version: 1, title })
const ownFrame = { url: 'app://fallroom/index.html', parent: null }

let folder: string
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'fallroom-'))
  process.env.FALLROOM_HOME = join(folder, 'home')
  await writeFile(join(folder, 'plan.json'), text('one'))
  process.argv = ['electron', '--no-sandbox', '/project', join(folder, 'plan.json')]
  await import('./main')
  await vi.waitFor(() => expect(fake.windowCalls.loadURL).toHaveBeenCalled())
})
afterAll(async () => {
  delete process.env.FALLROOM_HOME
  await rm(folder, { recursive: true, force: true })
})
beforeEach(() => {
  fake.send.mockClear()
  fake.windowCalls.close.mockClear()
})

const ask = async (verb: string, payload: unknown = {}, frame: unknown = ownFrame) =>
  fake.handlers.get('desk')?.({ senderFrame: frame }, verb, payload) as Promise<never>

describe('the window', () => {
  it('is locked', () => {
    expect(fake.state.options.webPreferences).toMatchObject({
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webSecurity: true,
      webviewTag: false,
    })
    expect(fake.windowCalls.loadURL).toHaveBeenCalledWith('app://fallroom/index.html')
    expect(fake.state.openHandler?.()).toEqual({ action: 'deny' })
  })

  it.each(['will-navigate', 'will-frame-navigate', 'will-redirect'])('goes nowhere else on %s', (name) => {
    const navigate = (url: string) => {
      const event = { url, preventDefault: vi.fn() }
      fake.page.get(name)?.(event as never)
      return event.preventDefault.mock.calls.length
    }
    expect(navigate('http://evil.example')).toBe(1)
    expect(navigate('file:///etc/passwd')).toBe(1)
    expect(navigate('app://fallroom.evil/index.html')).toBe(1)
    expect(navigate('javascript:alert(1)')).toBe(1)
    expect(navigate('app://fallroom/index.html')).toBe(0)
  })

  it('is given no permission and reaches no other machine', () => {
    const [answerPermission] = fake.session.setPermissionRequestHandler.mock.calls[0] ?? []
    for (const permission of ['media', 'geolocation', 'notifications', 'openExternal', 'fileSystem']) {
      const answer = vi.fn()
      answerPermission({}, permission, answer, { requestingUrl: ownFrame.url })
      expect(answer).toHaveBeenCalledWith(false)
    }
    const [before] = fake.session.webRequest.onBeforeRequest.mock.calls[0] ?? []
    const cancelled = (url: string) => {
      const answer = vi.fn()
      before({ url }, answer)
      return answer.mock.calls[0]?.[0].cancel
    }
    expect(cancelled('https://evil.example/x.js')).toBe(true)
    expect(cancelled('http://127.0.0.1:80/')).toBe(true)
    expect(cancelled('file:///etc/passwd')).toBe(true)
    expect(cancelled('app://fallroom/assets/a.js')).toBe(false)
    expect(cancelled('blob:app://fallroom/1')).toBe(false)
  })
})

describe('the verbs', () => {
  it.each([
    ['another page', { url: 'http://evil.example', parent: null }],
    ['a frame', { url: ownFrame.url, parent: {} }],
    ['a frame that is gone', null],
  ])('refuse %s', async (_, frame) => {
    await expect(ask('recent', {}, frame)).rejects.toThrow('refused')
  })

  it('refuse a name or a payload that is not theirs', async () => {
    for (const verb of ['constructor', '__proto__', 'exec', '']) await expect(ask(verb)).rejects.toThrow()
    expect(await ask('save', { path: '/etc/passwd' })).toMatchObject({ ok: false, code: 'bad-request' })
    expect(await ask('keepMesh', { id: null, name: 'x', bytes: 'y' })).toMatchObject({ code: 'bad-request' })
  })

  it('open the launch plan, save it, and save it elsewhere by dialog', async () => {
    const file = (await ask('launchFile')) as { ok: boolean; value: { id: string; text: string } }
    expect(file).toMatchObject({ ok: true, value: { text: text('one') } })
    const { id } = file.value
    expect(await ask('save', { id, text: text('two'), overwrite: false })).toMatchObject({ ok: true })
    expect(await readFile(join(folder, 'plan.json'), 'utf8')).toBe(text('two'))
    fake.choose.save.mockResolvedValueOnce({ canceled: false, filePath: join(folder, 'b.json') })
    expect(await ask('saveAs', { text: text('three'), name: '../../b.json', from: id })).toMatchObject({
      ok: true,
    })
    expect(fake.choose.save.mock.calls[0]?.[1].defaultPath).toBe(join(folder, 'b.json'))
    expect(await readFile(join(folder, 'b.json'), 'utf8')).toBe(text('three'))
  })

  it('say that a dialog was left without a choice', async () => {
    fake.choose.open.mockResolvedValueOnce({ canceled: true, filePaths: [] })
    expect(await ask('open')).toMatchObject({ ok: false, code: 'cancelled' })
  })
})

describe('closing with unsaved changes', () => {
  async function close(response: number) {
    await ask('setDocument', { title: 'one', unsaved: true })
    fake.choose.message.mockResolvedValueOnce({ response })
    const event = { preventDefault: vi.fn() }
    fake.windowOn.get('close')?.(event as never)
    expect(event.preventDefault).toHaveBeenCalled()
  }

  it('asks, and saves first', async () => {
    await close(0)
    await vi.waitFor(() => expect(fake.send).toHaveBeenCalledWith('desk-event', { kind: 'save-then-close' }))
    expect(fake.windowCalls.close).not.toHaveBeenCalled()
  })

  it('stays', async () => {
    await close(2)
    await new Promise(setImmediate)
    expect(fake.send).not.toHaveBeenCalled()
    expect(fake.windowCalls.close).not.toHaveBeenCalled()
  })

  it('closes without saving, and does not offer the changes again', async () => {
    await ask('journalWrite', { id: null, name: 'x', text: text('given up') })
    await close(1)
    await vi.waitFor(() => expect(fake.windowCalls.close).toHaveBeenCalled())
    expect(await ask('journalPending')).toEqual({ ok: true, value: [] })
  })
})

it('brings the window to the front and opens the plan of a second start', async () => {
  fake.on.get('second-instance')?.(...(['event', ['electron', '/project', 'b.json'], folder] as never[]))
  await vi.waitFor(() => expect(fake.send).toHaveBeenCalled())
  expect(fake.windowCalls.focus).toHaveBeenCalled()
  expect(fake.send.mock.calls[0]?.[1]).toMatchObject({
    kind: 'opened',
    file: { ok: true, value: { name: 'b.json' } },
  })
})
