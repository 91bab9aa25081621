import { homedir } from 'node:os'
import { join } from 'node:path'

interface Surroundings {
  platform: NodeJS.Platform
  env: Record<string, string | undefined>
  home: string
}

/** The folder where both desktops keep the journal, the recent list and the window's place. */
export function dataHome(
  { platform, env, home }: Surroundings = { platform: process.platform, env: process.env, home: homedir() },
): string {
  if (env.FALLROOM_HOME) return env.FALLROOM_HOME
  if (platform === 'win32') return join(env.APPDATA ?? join(home, 'AppData', 'Roaming'), 'Fallroom')
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Fallroom')
  return join(env.XDG_STATE_HOME || join(home, '.local', 'state'), 'fallroom')
}
