/**
 * A command is a record: what menus, keys, palette, buttons and tests all use. `when` says whether it can be run now;
 * where it can't it is shown grey or not at all, and never does anything.
 */
import { type AppState, app } from '../store'

export type CommandGroup = 'File' | 'Edit' | 'Site' | 'Rig' | 'Look' | 'Help'

export interface Command {
  id: string
  label: string | ((s: AppState) => string)
  group: CommandGroup
  /** Such as 'Mod+S'; Mod is Command on a Mac, Control elsewhere. */
  shortcut?: string
  when?: (s: AppState) => boolean
  run: () => unknown
}

export const labelOf = (command: Command, s: AppState = app.getState()): string =>
  typeof command.label === 'string' ? command.label : command.label(s)

export const canRun = (command: Command, s: AppState = app.getState()): boolean => command.when?.(s) ?? true

/** Runs it where it can be run; says whether it did. */
export function run(command: Command): boolean {
  if (!canRun(command)) return false
  void command.run()
  return true
}
