import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { ownArguments, planAsked } from './launch'
import { acceleratorOf, menuTemplate } from './menu'
import { isAllowed, isOwnAddress } from './policy'
import { usablePlace } from './window-place'

describe('isOwnAddress', () => {
  it.each(['app://fallroom/index.html', 'app://fallroom/assets/a.js?x#y'])('takes %s', (address) => {
    expect(isOwnAddress(address)).toBe(true)
  })
  it.each([
    'http://fallroom/',
    'app://evil/',
    'app://fallroom.evil/',
    'app://fallroom:1/',
    'app://user@fallroom/',
    'app:fallroom',
    'file:///app://fallroom/',
    'javascript:0',
    '',
  ])('refuses %s', (address) => {
    expect(isOwnAddress(address)).toBe(false)
  })
})

it('gives the clipboard only to its own page, and nothing else to anyone', () => {
  expect(isAllowed('clipboard-sanitized-write', 'app://fallroom/')).toBe(true)
  expect(isAllowed('clipboard-sanitized-write', 'http://evil.example')).toBe(false)
  expect(isAllowed('clipboard-read', 'app://fallroom/')).toBe(false)
})

describe('the command line', () => {
  it.each([
    [['electron', '/project', 'a.json'], false, 'a.json'],
    [['electron', '--no-sandbox', '/project', '--x', 'a.json'], false, 'a.json'],
    [['fallroom', '--flag', 'a.json'], true, 'a.json'],
  ])('%j asks for its plan', (argv, packaged, plan) => {
    expect(planAsked(ownArguments(argv, packaged), '/job')).toBe(join('/job', plan))
  })
  it.each([
    [['electron', '/project'], false],
    [['fallroom', '--flag', ''], true],
  ])('%j asks for none', (argv, packaged) => {
    expect(planAsked(ownArguments(argv, packaged), '/job')).toBeNull()
  })
})

describe('where the window opens', () => {
  const screen = { x: 0, y: 0, width: 1920, height: 1080 }
  const kept = { x: 100, y: 50, width: 1200, height: 800, maximized: false }
  it('is where it was', () => {
    expect(usablePlace(kept, [screen])).toEqual(kept)
  })
  it('is on a screen that is still there', () => {
    expect(usablePlace({ ...kept, x: 2500 }, [screen])).not.toHaveProperty('x')
    expect(usablePlace({ ...kept, x: 1800 }, [screen])).not.toHaveProperty('x')
    expect(usablePlace(null, [screen])).toEqual({ width: 1440, height: 900 })
  })
})

type Entry = Electron.MenuItemConstructorOptions

function below(entry: Entry | undefined): Entry[] {
  return Array.isArray(entry?.submenu) ? entry.submenu : []
}

function press(entry: Entry | undefined): void {
  const click = entry?.click as (() => void) | undefined
  click?.()
}

describe('the native menu', () => {
  const actions = { command: (id: string) => said.push(id), openRecent: (id: string) => said.push(id) }
  const said: string[] = []
  const groups = [
    { label: 'File', items: [{ id: 'save', label: 'Save', shortcut: 'mod+s', enabled: false }] },
  ]
  const recent = [{ id: 'r1', name: 'a.json', place: '/a.json', at: '' }]

  it('runs the commands of the window and opens recent plans', () => {
    const [file] = menuTemplate(groups, recent, actions, false)
    const [save, open] = below(file)
    expect(save).toMatchObject({
      label: 'Save',
      enabled: false,
      accelerator: 'CmdOrCtrl+S',
      registerAccelerator: false,
    })
    press(save)
    const [first] = below(open)
    press(first)
    expect(said).toEqual(['save', 'r1'])
  })

  it('starts with the application menu on a Mac', () => {
    expect(menuTemplate(groups, [], actions, true)[0]).toEqual({ role: 'appMenu' })
  })

  it.each([
    ['Ctrl+Shift+S', 'Ctrl+Shift+S'],
    ['mod+ArrowLeft', 'CmdOrCtrl+Left'],
    ['F5', 'F5'],
    ['Delete', 'Delete'],
  ])('writes %s as %s', (shortcut, accelerator) => {
    expect(acceleratorOf(shortcut)).toBe(accelerator)
  })
})
