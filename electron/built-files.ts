import { readdir, readFile } from 'node:fs/promises'
import { extname, join, relative, sep } from 'node:path'

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.glb': 'model/gltf-binary',
}

export interface BuiltFile {
  bytes: Buffer
  type: string
}

/**
 * The built window, by exact address. The list is made once, so no address can lead anywhere else: what is not in it
 * is not served.
 */
export class BuiltFiles {
  private constructor(
    private folder: string,
    private names: Set<string>,
  ) {}

  static async list(folder: string): Promise<BuiltFiles> {
    const entries = await readdir(folder, { recursive: true, withFileTypes: true })
    const files = entries.filter((entry) => entry.isFile())
    const names = files.map((entry) => relative(folder, join(entry.parentPath ?? entry.path, entry.name)))
    return new BuiltFiles(folder, new Set(names.map((name) => name.split(sep).join('/'))))
  }

  /** `address` is a URL's path with its leading slash, still encoded; names of the build need no encoding. */
  async read(address: string): Promise<BuiltFile | null> {
    const name = address === '/' ? 'index.html' : address.slice(1)
    const type = types[extname(name)]
    if (!this.names.has(name) || !type) return null
    return { bytes: await readFile(join(this.folder, name)), type }
  }
}
