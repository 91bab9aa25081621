import { ActionIcon, Menu, Tooltip } from '@mantine/core'
import { Check, Contrast } from 'lucide-react'
import type { JSX } from 'react'
import { useApp } from '../../state/store'
import { setTheme } from '../../state/theme-choice'
import type { ThemeChoice } from '../../state/window-state'

const choices: { value: ThemeChoice; label: string }[] = [
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
  { value: 'sunlight', label: 'Sunlight: black on white' },
  { value: 'system', label: 'As the system' },
]

/** The three looks. */
export function ThemeMenu(): JSX.Element {
  const chosen = useApp((s) => s.themeChoice)
  return (
    <Menu position="bottom-end">
      <Menu.Target>
        <Tooltip label="Light, dark or sunlight">
          <ActionIcon aria-label="Theme">
            <Contrast size={16} aria-hidden />
          </ActionIcon>
        </Tooltip>
      </Menu.Target>
      <Menu.Dropdown>
        {choices.map(({ value, label }) => (
          <Menu.Item
            key={value}
            onClick={() => setTheme(value)}
            leftSection={value === chosen ? <Check size={14} /> : <span style={{ width: 14 }} />}
          >
            {label}
          </Menu.Item>
        ))}
      </Menu.Dropdown>
    </Menu>
  )
}
