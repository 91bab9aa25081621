import type { MenuItemConstructorOptions } from 'electron'
import type { MenuGroup, MenuItem, RecentFile } from '../../src/desk/bridge'

interface MenuActions {
  command: (id: string) => void
  openRecent: (id: string) => void
}

/** The native menu, from the window's own commands; the desktop adds only what is the desktop's. */
export function menuTemplate(
  groups: MenuGroup[],
  recent: RecentFile[],
  actions: MenuActions,
  mac: boolean,
): MenuItemConstructorOptions[] {
  const own = groups.map((group, index) => ({
    label: group.label,
    submenu: [
      ...group.items.map((item) => menuItem(item, actions)),
      ...(mac && group.label === 'Edit' ? textRoles : []),
      // Plans are opened from the first group, as on every desktop.
      ...(index === 0 ? [recentMenu(recent, actions), ...quitItem(mac)] : []),
    ],
  }))
  const windowMenu: MenuItemConstructorOptions = { role: 'windowMenu' }
  return mac ? [{ role: 'appMenu' }, ...own, windowMenu] : [...own, windowMenu]
}

/** On a Mac the keys of text fields work only through menu entries of these roles. */
const textRoles: MenuItemConstructorOptions[] = (['cut', 'copy', 'paste', 'selectAll'] as const).map(
  (role) => ({
    role,
    visible: false,
    acceleratorWorksWhenHidden: true,
  }),
)

function menuItem(item: MenuItem, actions: MenuActions): MenuItemConstructorOptions {
  const accelerator = item.shortcut ? { accelerator: acceleratorOf(item.shortcut) } : {}
  return {
    label: item.label,
    enabled: item.enabled,
    click: () => actions.command(item.id),
    // The window hears its own keys; the menu only shows them.
    ...accelerator,
    registerAccelerator: false,
  }
}

function recentMenu(recent: RecentFile[], actions: MenuActions): MenuItemConstructorOptions {
  const submenu = recent.map((file) => ({
    label: file.name,
    sublabel: file.place,
    click: () => actions.openRecent(file.id),
  }))
  return { label: 'Open recent', enabled: recent.length > 0, submenu }
}

function quitItem(mac: boolean): MenuItemConstructorOptions[] {
  return mac ? [] : [{ type: 'separator' }, { role: 'quit' }]
}

/** 'mod+shift+s' or 'Ctrl+S' as the window writes it, in Electron's words. */
export function acceleratorOf(shortcut: string): string {
  const words: Record<string, string> = {
    mod: 'CmdOrCtrl',
    ctrl: 'Ctrl',
    shift: 'Shift',
    alt: 'Alt',
    meta: 'Cmd',
  }
  const keys: Record<string, string> = {
    arrowleft: 'Left',
    arrowright: 'Right',
    arrowup: 'Up',
    arrowdown: 'Down',
  }
  return shortcut
    .split('+')
    .map((part) => part.trim().toLowerCase())
    .map((part) => words[part] ?? keys[part] ?? (part.length === 1 ? part.toUpperCase() : capital(part)))
    .join('+')
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1)
}
