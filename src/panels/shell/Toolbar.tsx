/** What the hand can do in this view, at the scene's upper edge; and what the tool in hand wants next. */
import { Button, Menu, Tooltip } from '@mantine/core'
import { ChevronDown } from 'lucide-react'
import type { JSX } from 'react'
import { setTool } from '../../state/actions'
import { canRun, labelOf, run } from '../../state/commands/command'
import { shownShortcut } from '../../state/commands/keys'
import { command } from '../../state/commands/registry'
import { useApp } from '../../state/store'
import { toolWords } from '../../state/tools/words'
import type { View } from '../../state/window-state'
import css from './toolbar.module.css'

interface Tools {
  shown: [id: string, label: string][]
  more: string[]
}

const tools: Partial<Record<View, Tools>> = {
  site: {
    shown: [
      ['site.drawGirder', 'Girder'],
      ['site.copyGirder', 'Copy at spacing'],
      ['site.drawDeck', 'Deck'],
      ['site.addBox', 'Box'],
      ['site.drawLane', 'Lane'],
    ],
    more: [
      'site.girderTable',
      'site.deckTable',
      'site.laneTable',
      'site.addLoops',
      'site.loopTable',
      'site.addGround',
      'site.addWater',
      'site.addCrossFrame',
      'site.addMesh',
    ],
  },
  rig: {
    shown: [
      ['rig.drawLine', 'Line'],
      ['rig.addStanchion', 'Stanchion'],
      ['rig.addTieBack', 'Tie-back'],
      ['rig.addWorker', 'Worker'],
      ['rig.find', 'Find'],
      ['rig.parts', 'Parts'],
    ],
    more: ['rig.spread', 'rig.explore', 'rig.lineOnGirder', 'rig.copyLine', 'rig.rescue', 'rig.basis'],
  },
}

export function Toolbar(): JSX.Element | null {
  const view = useApp((s) => s.view)
  const set = tools[view]
  if (!set) return null
  return (
    <div className={css.place}>
      <div className={css.bar} role="toolbar" aria-label="Tools">
        {set.shown.map(([id, label]) => (
          <ToolButton key={id} id={id} label={label} />
        ))}
        <More ids={set.more} />
      </div>
      <ToolWords />
    </div>
  )
}

/** Commands that put a tool in the hand, by the tool. */
const inHand: Record<string, string> = {
  'draw-girder': 'site.drawGirder',
  'draw-deck': 'site.drawDeck',
  'draw-lane': 'site.drawLane',
  'draw-line': 'rig.drawLine',
}

function ToolButton({ id, label }: { id: string; label: string }): JSX.Element {
  const record = command(id)
  const enabled = useApp((s) => canRun(record, s))
  const active = useApp((s) => inHand[s.tool.kind] === id)
  const key = record.shortcut ? ` (${shownShortcut(record.shortcut)})` : ''
  return (
    <Tooltip label={`${labelOf(record)}${key}`}>
      <Button
        className={css.tool}
        variant={active ? 'filled' : 'default'}
        aria-pressed={active}
        disabled={!enabled}
        onClick={() => (active ? setTool({ kind: 'select' }) : run(record))}
      >
        {label}
      </Button>
    </Tooltip>
  )
}

function More({ ids }: { ids: string[] }): JSX.Element {
  return (
    <Menu position="bottom-start" width={280}>
      <Menu.Target>
        <Button className={css.tool} rightSection={<ChevronDown size={14} aria-hidden />}>
          More
        </Button>
      </Menu.Target>
      <Menu.Dropdown>
        {ids.map((id) => (
          <MoreItem key={id} id={id} />
        ))}
      </Menu.Dropdown>
    </Menu>
  )
}

function MoreItem({ id }: { id: string }): JSX.Element {
  const record = command(id)
  const enabled = useApp((s) => canRun(record, s))
  return (
    <Menu.Item
      disabled={!enabled}
      onClick={() => run(record)}
      rightSection={record.shortcut ? <kbd className={css.kbd}>{shownShortcut(record.shortcut)}</kbd> : null}
    >
      {labelOf(record)}
    </Menu.Item>
  )
}

function ToolWords(): JSX.Element | null {
  const words = useApp((s) => toolWords(s.tool))
  return words ? (
    <p className={css.words} role="status">
      {words}
    </p>
  ) : null
}
