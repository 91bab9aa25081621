/** The menu of the right button: the same command records as everywhere, for what is selected. */
import { Menu } from '@mantine/core'
import type { JSX } from 'react'
import { canRun, labelOf, run } from '../../state/commands/command'
import { shownShortcut } from '../../state/commands/keys'
import { command } from '../../state/commands/registry'
import { app, useApp } from '../../state/store'
import { contextCommands } from './context'
import css from './menu.module.css'

export function ContextMenu(): JSX.Element | null {
  const at = useApp((s) => s.menu)
  if (!at) return null
  const close = (): void => app.setState({ menu: null })
  const records = contextCommands(app.getState())
    .map(command)
    .filter((c) => canRun(c))
  return (
    <Menu opened onClose={close} position="bottom-start" withinPortal width={260} offset={2}>
      <Menu.Target>
        <span style={{ position: 'fixed', left: at.x, top: at.y, width: 1, height: 1 }} aria-hidden />
      </Menu.Target>
      <Menu.Dropdown>
        {records.map((record) => (
          <Menu.Item
            key={record.id}
            onClick={() => run(record)}
            rightSection={
              record.shortcut ? <kbd className={css.kbd}>{shownShortcut(record.shortcut)}</kbd> : null
            }
          >
            {labelOf(record)}
          </Menu.Item>
        ))}
      </Menu.Dropdown>
    </Menu>
  )
}
