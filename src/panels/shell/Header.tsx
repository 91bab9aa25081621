/** The head of the window: what is open and how it stands, the views, undo and redo, units, theme, the counts. */
import { ActionIcon, SegmentedControl, Tooltip } from '@mantine/core'
import { Redo2, Undo2 } from 'lucide-react'
import type { JSX } from 'react'
import { useStore } from 'zustand'
import { setUnits, showView } from '../../state/actions'
import { canRun, labelOf, run } from '../../state/commands/command'
import { shownShortcut } from '../../state/commands/keys'
import { command } from '../../state/commands/registry'
import { app, isDirty, useApp } from '../../state/store'
import { shownViews, viewWord } from '../../state/views'
import type { UnitSystem } from '../../state/window-state'
import { ApprovalState } from './ApprovalState'
import { Counts } from './Counts'
import { FileMenu } from './FileMenu'
import css from './header.module.css'
import { ThemeMenu } from './ThemeMenu'

export function Header(): JSX.Element {
  return (
    <header className={css.header}>
      <FileMenu />
      <Title />
      <Views />
      <div className={css.tools}>
        <HistoryButton id="edit.undo" />
        <HistoryButton id="edit.redo" />
        <Units />
        <ThemeMenu />
      </div>
      <Counts />
    </header>
  )
}

function Title(): JSX.Element {
  const title = useApp((s) => s.plan.title)
  const dirty = useApp(isDirty)
  return (
    <>
      <h1 className={css.title} title={title}>
        <span className={css.name}>{title}</span>
        {dirty ? <span className={css.dirty}> not saved</span> : null}
      </h1>
      <ApprovalState />
    </>
  )
}

function Views(): JSX.Element {
  const view = useApp((s) => s.view)
  return (
    <div className={css.views} role="tablist" aria-label="Views">
      {shownViews.map((v) => (
        <button
          key={v}
          type="button"
          role="tab"
          className={css.view}
          aria-selected={v === view}
          onClick={() => showView(v)}
        >
          {viewWord[v]}
        </button>
      ))}
    </div>
  )
}

const icons = { 'edit.undo': Undo2, 'edit.redo': Redo2 }

function HistoryButton({ id }: { id: keyof typeof icons }): JSX.Element {
  const length = useStore(app.temporal, (t) => t.pastStates.length * 1000 + t.futureStates.length)
  const record = command(id)
  const label = labelOf(record)
  const Icon = icons[id]
  return (
    <Tooltip label={`${label} (${shownShortcut(record.shortcut ?? '')})`}>
      <ActionIcon
        aria-label={label}
        data-history={length}
        disabled={!canRun(record)}
        onClick={() => run(record)}
      >
        <Icon size={16} aria-hidden />
      </ActionIcon>
    </Tooltip>
  )
}

const units = [
  { value: 'us', label: 'ft-in' },
  { value: 'si', label: 'm' },
]

function Units(): JSX.Element {
  const system = useApp((s) => s.units)
  return (
    <SegmentedControl
      size="xs"
      aria-label="Units"
      data={units}
      value={system}
      onChange={(value) => setUnits(value as UnitSystem)}
    />
  )
}
