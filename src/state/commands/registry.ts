/** All commands by id. */
import type { Command } from './command'
import { editCommands } from './edit-commands'
import { fileCommands } from './file-commands'
import { helpCommands } from './help-commands'
import { rigCommands } from './rig-commands'
import { siteCommands } from './site-commands'
import { viewCommands } from './view-commands'

export const commands: readonly Command[] = [
  ...fileCommands,
  ...editCommands,
  ...siteCommands,
  ...rigCommands,
  ...viewCommands,
  ...helpCommands,
]

const byId = new Map(commands.map((c) => [c.id, c]))

/** A command by its id; asking for one that does not exist is a mistake in the program. */
export function command(id: string): Command {
  const found = byId.get(id)
  if (!found) throw new Error(`there is no command ${id}`)
  return found
}
