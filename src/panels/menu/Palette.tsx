/** The command palette: every command by its words, and everything in the plan by its name. */
import { Spotlight, type SpotlightActionData } from '@mantine/spotlight'
import { Search } from 'lucide-react'
import { type JSX, useState } from 'react'
import { lookAtRef, select } from '../../state/actions'
import { canRun, labelOf, run } from '../../state/commands/command'
import { shownShortcut } from '../../state/commands/keys'
import { commands } from '../../state/commands/registry'
import { everything } from '../../state/everything'
import { refKey } from '../../state/refs'
import { type AppState, app } from '../../state/store'
import { kindWord, refName } from '../words/status'
import css from './menu.module.css'

export function Palette(): JSX.Element {
  const [actions, setActions] = useState<SpotlightActionData[]>([])
  return (
    <Spotlight
      actions={actions}
      onSpotlightOpen={() => setActions(actionsNow(app.getState()))}
      shortcut={['mod + K', 'F1']}
      nothingFound="Nothing has that name."
      highlightQuery
      limit={12}
      scrollable
      maxHeight={420}
      overlayProps={{ blur: 0 }}
      attributes={{ content: { 'aria-label': 'Commands and things in the plan' } }}
      scrollAreaProps={{ viewportProps: { tabIndex: 0 } }}
      searchProps={{
        leftSection: <Search size={16} />,
        placeholder: 'Find a command or a thing in the plan',
        'aria-label': 'Find a command or a thing in the plan',
      }}
    />
  )
}

/** Built when it is opened: what can be run depends on how things stand then. */
const actionsNow = (s: AppState): SpotlightActionData[] => [...commandActions(s), ...planActions(s.plan)]

const commandActions = (s: AppState): SpotlightActionData[] =>
  commands
    .filter((c) => canRun(c, s) && c.id !== 'edit.escape')
    .map((c) => ({
      id: c.id,
      label: labelOf(c, s),
      description: c.group,
      onClick: () => run(c),
      rightSection: c.shortcut ? <kbd className={css.kbd}>{shownShortcut(c.shortcut)}</kbd> : undefined,
    }))

const planActions = (plan: Parameters<typeof everything>[0]): SpotlightActionData[] =>
  everything(plan).map((ref) => ({
    id: refKey(ref),
    label: refName(plan, ref),
    description: `Go to this ${kindWord[ref.kind]}`,
    onClick: () => {
      select(ref)
      lookAtRef(ref)
    },
  }))
