import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/**
 * Electron's executable if it lies there already, or null. Electron's own module is not asked, since it would download
 * the executable at that moment.
 * @param {string} root the project's folder
 * @returns {string | null}
 */
export function findElectron(root, env = process.env) {
  const folder = join(root, 'node_modules', 'electron')
  const nameFile = join(folder, 'path.txt')
  const name = existsSync(nameFile) ? readFileSync(nameFile, 'utf8').trim() : null
  const override = env.ELECTRON_OVERRIDE_DIST_PATH
  if (!name && !override) return null
  const path = join(override ?? join(folder, 'dist'), name ?? 'electron')
  return existsSync(path) ? path : null
}
