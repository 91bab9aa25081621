import { look, setUnits, showView } from '../actions'
import { app } from '../store'
import { setTheme } from '../theme-choice'
import { shownViews, viewWord } from '../views'
import type { CameraView, ThemeChoice } from '../window-state'
import type { Command } from './command'

const cameras: [CameraView, string, string][] = [
  ['home', 'Look from three quarters', '1'],
  ['along', 'Look along the line', '2'],
  ['across', 'Look across', '3'],
  ['above', 'Look from above', '4'],
  ['below', 'Look from below', '5'],
  ['worst', 'Look at the worst place', '6'],
]

const themes: [ThemeChoice, string][] = [
  ['light', 'Light'],
  ['dark', 'Dark'],
  ['sunlight', 'Sunlight'],
  ['system', 'As the system'],
]

export const viewCommands: Command[] = [
  ...shownViews.map(
    (view, i): Command => ({
      id: `view.${view}`,
      label: `View: ${viewWord[view]}`,
      group: 'Look',
      shortcut: `Alt+${i + 1}`,
      run: () => showView(view),
    }),
  ),
  ...cameras.map(
    ([to, label, shortcut]): Command => ({
      id: `camera.${to}`,
      label,
      group: 'Look',
      shortcut,
      run: () => look(to),
    }),
  ),
  {
    id: 'camera.selection',
    label: 'Fly to what is selected',
    group: 'Look',
    shortcut: 'F',
    when: (s) => s.selection.length > 0,
    run: () => {
      const ref = app.getState().selection[0]
      if (ref) look({ ref })
    },
  },
  ...themes.map(
    ([choice, label]): Command => ({
      id: `theme.${choice}`,
      label: `Theme: ${label}`,
      group: 'Look',
      run: () => setTheme(choice),
    }),
  ),
  {
    id: 'units.switch',
    label: (s) => (s.units === 'us' ? 'Show metres and kN' : 'Show feet, inches and lbf'),
    group: 'Look',
    shortcut: 'U',
    run: () => setUnits(app.getState().units === 'us' ? 'si' : 'us'),
  },
  {
    id: 'look.hide',
    label: 'Hide or show',
    group: 'Look',
    shortcut: 'H',
    when: (s) => s.selection.length > 0,
    run: () => toggle('hidden'),
  },
  {
    id: 'look.lock',
    label: 'Lock or unlock',
    group: 'Edit',
    shortcut: 'L',
    when: (s) => s.selection.length > 0,
    run: () => toggle('locked'),
  },
  {
    id: 'look.showAll',
    label: 'Show everything hidden',
    group: 'Look',
    when: (s) => s.hidden.length > 0,
    run: () => app.setState({ hidden: [] }),
  },
]

/** All of the selection in, or, where all of it is in already, out. */
function toggle(list: 'hidden' | 'locked'): void {
  const state = app.getState()
  const ids = state.selection.map((r) => r.id)
  const all = ids.every((id) => state[list].includes(id))
  const next = all ? state[list].filter((id) => !ids.includes(id)) : [...new Set([...state[list], ...ids])]
  app.setState({ [list]: next })
}
