/** The desk's native menu: the same command records as the window's own menus, palette and keys. */
import type { MenuGroup } from '../desk/bridge'
import { getDesk } from '../desk/desk'
import { canRun, labelOf } from './commands/command'
import { commands } from './commands/registry'
import { app } from './store'

/** Keeps the native menu in step with what can be run. Only Electron has one. */
export function startDeskMenu(): void {
  if (getDesk().kind !== 'electron') return
  let shown = ''
  const show = (): void => {
    const groups = menuGroups()
    const now = JSON.stringify(groups)
    if (now !== shown) getDesk().setMenu(groups)
    shown = now
  }
  show()
  app.subscribe((state, before) => {
    // While something is dragged no menu is open.
    if (
      !state.gesture &&
      (state.plan !== before.plan || state.selection !== before.selection || before.gesture)
    )
      show()
  })
}

function menuGroups(): MenuGroup[] {
  const groups = new Map<string, MenuGroup>()
  for (const command of commands) {
    const group = groups.get(command.group) ?? { label: command.group, items: [] }
    groups.set(command.group, group)
    const shortcut = command.shortcut === undefined ? {} : { shortcut: command.shortcut }
    group.items.push({ id: command.id, label: labelOf(command), enabled: canRun(command), ...shortcut })
  }
  return [...groups.values()]
}
