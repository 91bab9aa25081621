/** The window of searches: find a layout, mend a finding, spread what is uncertain, explore where passing ends. */
import { Tabs } from '@mantine/core'
import type { JSX } from 'react'
import { app, useApp } from '../../state/store'
import type { Dialog } from '../../state/window-state'
import { DialogFrame } from '../shell/DialogFrame'
import { Caution } from '../words/Caution'
import { ExplorePage } from './ExplorePage'
import { FindPage } from './FindPage'
import { MendPage } from './MendPage'
import { SpreadPage } from './SpreadPage'

type FindWindow = Extract<Dialog, { kind: 'find' }>

export default function FindDialog(): JSX.Element | null {
  const dialog = useApp((s) => (s.dialog?.kind === 'find' ? s.dialog : null))
  const line = useApp((s) => s.plan.lines.find((l) => l.id === dialog?.line))
  if (!dialog || !line) return null
  const turnTo = (tab: string | null): void =>
    app.setState({ dialog: { ...dialog, tab: (tab ?? 'find') as FindWindow['tab'] } })
  return (
    <DialogFrame title={`Find: ${line.name || line.id}`} size="min(900px, 94vw)">
      <Tabs value={dialog.tab} onChange={turnTo} keepMounted={false}>
        <Tabs.List>
          <Tabs.Tab value="find">Layout</Tabs.Tab>
          {dialog.finding ? <Tabs.Tab value="mend">Mend</Tabs.Tab> : null}
          <Tabs.Tab value="spread">Spread</Tabs.Tab>
          <Tabs.Tab value="explore">Explore</Tabs.Tab>
        </Tabs.List>
        <Tabs.Panel value="find">
          <FindPage key={line.id} line={line} />
        </Tabs.Panel>
        {dialog.finding ? (
          <Tabs.Panel value="mend">
            <MendPage finding={dialog.finding} line={line.id} />
          </Tabs.Panel>
        ) : null}
        <Tabs.Panel value="spread">
          <SpreadPage line={line} />
        </Tabs.Panel>
        <Tabs.Panel value="explore">
          <ExplorePage line={line} />
        </Tabs.Panel>
      </Tabs>
      <Caution />
    </DialogFrame>
  )
}
