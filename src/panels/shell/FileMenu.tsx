/** The program's name, and under it what can be done with files and where help is. */
import { Menu, UnstyledButton } from '@mantine/core'
import { ChevronDown } from 'lucide-react'
import { type JSX, useState } from 'react'
import type { RecentFile } from '../../desk/bridge'
import { getDesk } from '../../desk/desk'
import { labelOf, run } from '../../state/commands/command'
import { shownShortcut } from '../../state/commands/keys'
import { command } from '../../state/commands/registry'
import { openRecent } from '../../state/files/document'
import { useApp } from '../../state/store'
import css from './header.module.css'

const files = ['file.new', 'file.open', 'file.save', 'file.saveAs', 'file.sample']
const help = ['help.hint', 'help.shortcuts', 'help.about']

export function FileMenu(): JSX.Element {
  const [recent, setRecent] = useState<RecentFile[]>([])
  const load = async (): Promise<void> => {
    const said = await getDesk().recent()
    setRecent(said.ok ? said.value.slice(0, 6) : [])
  }
  return (
    <Menu position="bottom-start" width={280} onOpen={() => void load()}>
      <Menu.Target>
        <UnstyledButton className={css.brand} aria-label="Fallroom: files and help">
          Fallroom <ChevronDown size={14} aria-hidden />
        </UnstyledButton>
      </Menu.Target>
      <Menu.Dropdown>
        {files.map((id) => (
          <Entry key={id} id={id} />
        ))}
        {recent.length > 0 ? <Menu.Label>Opened last</Menu.Label> : null}
        {recent.map((file) => (
          <Menu.Item key={file.id} onClick={() => void openRecent(file.id)} title={file.place}>
            {file.name}
          </Menu.Item>
        ))}
        <Menu.Divider />
        {help.map((id) => (
          <Entry key={id} id={id} />
        ))}
      </Menu.Dropdown>
    </Menu>
  )
}

function Entry({ id }: { id: string }): JSX.Element {
  const record = command(id)
  const label = useApp((s) => labelOf(record, s))
  const enabled = useApp((s) => record.when?.(s) ?? true)
  return (
    <Menu.Item
      disabled={!enabled}
      onClick={() => run(record)}
      rightSection={record.shortcut ? <kbd className={css.kbd}>{shownShortcut(record.shortcut)}</kbd> : null}
    >
      {label}
    </Menu.Item>
  )
}
