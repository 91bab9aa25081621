/** The native menus of desktops that have them: the same command records, told again when what can be run changes. */
import type { MenuGroup } from '../desk/bridge'
import { getDesk } from '../desk/desk'
import { type CommandGroup, canRun, labelOf } from './commands/command'
import { commands } from './commands/registry'
import { type AppState, app } from './store'

const order: CommandGroup[] = ['File', 'Edit', 'Site', 'Rig', 'Look', 'Help']

const menusOf = (s: AppState): MenuGroup[] =>
  order.map((label) => ({
    label,
    items: commands
      .filter((c) => c.group === label && c.id !== 'edit.escape')
      .map((c) => ({
        id: c.id,
        label: labelOf(c, s),
        enabled: canRun(c, s),
        ...(c.shortcut ? { shortcut: c.shortcut } : {}),
      })),
  }))

export function startMenus(): void {
  let told = ''
  let timer = 0
  const tell = (): void => {
    const menus = menusOf(app.getState())
    const text = JSON.stringify(menus)
    if (text === told) return
    told = text
    getDesk().setMenu(menus)
  }
  tell()
  app.subscribe(() => {
    window.clearTimeout(timer)
    timer = window.setTimeout(tell, 200)
  })
}
