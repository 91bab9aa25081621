import { saveDiagnostic } from '../files/diagnostic'
import { app } from '../store'
import type { Command } from './command'

export const helpCommands: Command[] = [
  {
    id: 'help.shortcuts',
    label: 'Keys',
    group: 'Help',
    shortcut: 'Shift+Slash',
    run: () => app.setState({ dialog: { kind: 'shortcuts' } }),
  },
  { id: 'help.hint', label: 'First steps', group: 'Help', run: () => app.setState({ hintStep: 0 }) },
  {
    id: 'help.about',
    label: 'What this does and does not do',
    group: 'Help',
    run: () => app.setState({ dialog: { kind: 'about' } }),
  },
  {
    id: 'help.diagnostic',
    label: 'Save a diagnostic file',
    group: 'Help',
    run: () => saveDiagnostic(true),
  },
  {
    id: 'help.diagnosticWithoutNames',
    label: 'Save a diagnostic file without names',
    group: 'Help',
    run: () => saveDiagnostic(false),
  },
]
