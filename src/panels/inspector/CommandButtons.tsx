import { Button, Tooltip } from '@mantine/core'
import type { JSX } from 'react'
import { canRun, labelOf, run } from '../../state/commands/command'
import { shownShortcut } from '../../state/commands/keys'
import { command } from '../../state/commands/registry'
import { useApp } from '../../state/store'
import css from './inspector.module.css'

/** Commands as small buttons under the fields. */
export function CommandButtons({ ids }: { ids: string[] }): JSX.Element {
  return (
    <div className={css.actions}>
      {ids.map((id) => (
        <CommandButton key={id} id={id} />
      ))}
    </div>
  )
}

function CommandButton({ id }: { id: string }): JSX.Element {
  const record = command(id)
  const label = useApp((s) => labelOf(record, s))
  const enabled = useApp((s) => canRun(record, s))
  return (
    <Tooltip label={record.shortcut ? `${label} (${shownShortcut(record.shortcut)})` : label}>
      <Button size="compact-xs" disabled={!enabled} onClick={() => run(record)}>
        {label}
      </Button>
    </Tooltip>
  )
}
