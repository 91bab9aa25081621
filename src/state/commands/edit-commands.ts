import { select, selectAll, setTool } from '../actions'
import { copySelection, cutSelection, pasteFromDesk } from '../clipboard'
import { redo, undo } from '../edit'
import { pointsOf } from '../edits/transform'
import { everything } from '../everything'
import { step } from '../nudge'
import { deleteSelection, duplicateSelection, moveSelectionBy, turnSelection } from '../selection-edits'
import { type AppState, app, history } from '../store'
import { toolDone } from '../tools/tools'
import { canType, typeBeside } from '../typed/typing'
import type { Command } from './command'

const some = (s: AppState): boolean => s.selection.length > 0
/** What has a place of its own: a level is everywhere, and bracing goes with its girders. */
const canTurn = (s: AppState): boolean => s.selection.some((ref) => pointsOf(s.plan, ref).length > 0)

export const editCommands: Command[] = [
  {
    id: 'edit.undo',
    label: (s) => (s.edited && history().pastStates.length > 0 ? `Undo: ${s.edited}` : 'Undo'),
    group: 'Edit',
    shortcut: 'Mod+Z',
    when: () => history().pastStates.length > 0,
    run: undo,
  },
  {
    id: 'edit.redo',
    label: () => {
      const next = history().futureStates.at(-1)?.edited
      return next ? `Redo: ${next}` : 'Redo'
    },
    group: 'Edit',
    shortcut: 'Mod+Shift+Z',
    when: () => history().futureStates.length > 0,
    run: redo,
  },
  { id: 'edit.cut', label: 'Cut', group: 'Edit', shortcut: 'Mod+X', when: some, run: cutSelection },
  { id: 'edit.copy', label: 'Copy', group: 'Edit', shortcut: 'Mod+C', when: some, run: copySelection },
  { id: 'edit.paste', label: 'Paste', group: 'Edit', shortcut: 'Mod+V', run: pasteFromDesk },
  {
    id: 'edit.duplicate',
    label: 'Duplicate',
    group: 'Edit',
    shortcut: 'Mod+D',
    when: some,
    run: duplicateSelection,
  },
  { id: 'edit.delete', label: 'Delete', group: 'Edit', shortcut: 'Delete', when: some, run: deleteSelection },
  {
    id: 'edit.turnLeft',
    label: 'Turn 15 degrees left',
    group: 'Edit',
    shortcut: '[',
    when: canTurn,
    run: () => turnSelection(15),
  },
  {
    id: 'edit.turnRight',
    label: 'Turn 15 degrees right',
    group: 'Edit',
    shortcut: ']',
    when: canTurn,
    run: () => turnSelection(-15),
  },
  {
    id: 'edit.selectAll',
    label: 'Select everything',
    group: 'Edit',
    shortcut: 'Mod+A',
    run: () => selectAll(everything(app.getState().plan)),
  },
  {
    id: 'edit.nudgeOn',
    label: 'Nudge on by one loop',
    group: 'Edit',
    shortcut: 'ArrowRight',
    when: some,
    run: () => step(1),
  },
  {
    id: 'edit.nudgeBack',
    label: 'Nudge back by one loop',
    group: 'Edit',
    shortcut: 'ArrowLeft',
    when: some,
    run: () => step(-1),
  },
  {
    id: 'edit.nudgeLeft',
    label: 'Move left',
    group: 'Edit',
    shortcut: 'ArrowUp',
    when: canTurn,
    run: () => moveSelectionBy(0, 1),
  },
  {
    id: 'edit.nudgeRight',
    label: 'Move right',
    group: 'Edit',
    shortcut: 'ArrowDown',
    when: canTurn,
    run: () => moveSelectionBy(0, -1),
  },
  {
    id: 'edit.done',
    label: 'Finish what is being drawn',
    group: 'Edit',
    shortcut: 'Enter',
    when: (s) => s.tool.kind === 'draw-deck' || s.tool.kind === 'draw-lane',
    run: toolDone,
  },
  {
    id: 'edit.type',
    label: 'Type its place',
    group: 'Edit',
    shortcut: 'Enter',
    when: (s) => s.tool.kind === 'select' && s.selection.length === 1 && canType(s, s.selection[0]),
    run: () => {
      const [ref] = app.getState().selection
      if (ref) typeBeside(ref)
    },
  },
  {
    id: 'edit.escape',
    label: 'Let go',
    group: 'Edit',
    shortcut: 'Escape',
    when: (s) => some(s) || s.tool.kind !== 'select',
    run: () => (app.getState().tool.kind === 'select' ? select(null) : setTool({ kind: 'select' })),
  },
]
