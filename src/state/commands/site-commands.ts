import { setTool } from '../actions'
import { addLoopRow } from '../edits/girder-edits'
import { addBox, addCrossFrame, addLevel, siteMiddle } from '../edits/obstacle-edits'
import { addMesh } from '../files/mesh'
import type { AppState } from '../store'
import { app } from '../store'
import { addAndSelect } from './add'
import type { Command } from './command'

const girder = (s: AppState): string | undefined => s.selection.find((r) => r.kind === 'girder')?.id
const girders = (s: AppState): string[] => s.selection.filter((r) => r.kind === 'girder').map((r) => r.id)

export const siteCommands: Command[] = [
  {
    id: 'site.drawGirder',
    label: 'Draw a girder',
    group: 'Site',
    shortcut: 'G',
    run: () => setTool({ kind: 'draw-girder', points: [] }),
  },
  {
    id: 'site.girderTable',
    label: 'Type or paste girders',
    group: 'Site',
    shortcut: 'Shift+G',
    run: () => app.setState({ dialog: { kind: 'girder-table' } }),
  },
  {
    id: 'site.copyGirder',
    label: 'Copy the girder at a spacing',
    group: 'Site',
    shortcut: 'C',
    when: (s) => girder(s) !== undefined,
    run: () => {
      const id = girder(app.getState())
      if (id) app.setState({ dialog: { kind: 'copy-girder', girder: id } })
    },
  },
  {
    id: 'site.addLoops',
    label: 'Add a row of loops',
    group: 'Site',
    when: (s) => girder(s) !== undefined,
    run: () => {
      const id = girder(app.getState())
      if (id) addAndSelect('loop-row', 'add a row of loops', (plan) => addLoopRow(plan, id))
    },
  },
  {
    id: 'site.loopTable',
    label: 'Paste a table of loops',
    group: 'Site',
    when: (s) => girder(s) !== undefined,
    run: () => {
      const id = girder(app.getState())
      if (id) app.setState({ dialog: { kind: 'loop-table', girder: id } })
    },
  },
  {
    id: 'site.drawDeck',
    label: 'Draw a deck',
    group: 'Site',
    shortcut: 'D',
    run: () => setTool({ kind: 'draw-deck', points: [] }),
  },
  {
    id: 'site.deckTable',
    label: 'Type or paste a deck',
    group: 'Site',
    shortcut: 'Shift+D',
    run: () => app.setState({ dialog: { kind: 'deck-table' } }),
  },
  {
    id: 'site.addGround',
    label: 'Add ground',
    group: 'Site',
    run: () => addAndSelect('obstacle', 'add ground', (plan) => addLevel(plan, 'ground')),
  },
  {
    id: 'site.addWater',
    label: 'Add water',
    group: 'Site',
    run: () => addAndSelect('obstacle', 'add water', (plan) => addLevel(plan, 'water')),
  },
  {
    id: 'site.addBox',
    label: 'Add a box',
    group: 'Site',
    shortcut: 'B',
    run: () => addAndSelect('obstacle', 'add a box', (plan) => addBox(plan, siteMiddle(plan))),
  },
  {
    id: 'site.drawLane',
    label: 'Draw a road or rail lane',
    group: 'Site',
    shortcut: 'N',
    run: () => setTool({ kind: 'draw-lane', points: [] }),
  },
  {
    id: 'site.laneTable',
    label: 'Type or paste a road or rail lane',
    group: 'Site',
    shortcut: 'Shift+N',
    run: () => app.setState({ dialog: { kind: 'lane-table' } }),
  },
  {
    id: 'site.addCrossFrame',
    label: 'Add a cross-frame between two girders',
    group: 'Site',
    when: (s) => girders(s).length === 2,
    run: () => {
      const [a, b] = girders(app.getState())
      if (a && b) addAndSelect('obstacle', 'add a cross-frame', (plan) => addCrossFrame(plan, [a, b], 5))
    },
  },
  { id: 'site.addMesh', label: 'Add a model file', group: 'Site', run: addMesh },
]
