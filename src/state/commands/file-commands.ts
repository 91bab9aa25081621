import { newPlan, open, save, saveAs } from '../files/document'
import { openSample } from '../files/samples'
import { isDirty } from '../store'
import type { Command } from './command'

export const fileCommands: Command[] = [
  { id: 'file.new', label: 'New plan', group: 'File', shortcut: 'Mod+Alt+N', run: newPlan },
  { id: 'file.open', label: 'Open a plan', group: 'File', shortcut: 'Mod+O', run: open },
  {
    id: 'file.save',
    label: 'Save',
    group: 'File',
    shortcut: 'Mod+S',
    when: (s) => isDirty(s) || s.file.id === null,
    run: save,
  },
  { id: 'file.saveAs', label: 'Save as', group: 'File', shortcut: 'Mod+Shift+S', run: saveAs },
  { id: 'file.sample', label: 'Open the sample bay', group: 'File', run: openSample },
]
