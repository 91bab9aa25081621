import { readdir, readFile } from 'node:fs/promises'
import { extname, join } from 'node:path'

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
    return new BuiltFiles(folder, new Set(await namesIn(folder, '')))
  }

  /** `address` is a URL's path with its leading slash, still encoded; names of the build need no encoding. */
  async read(address: string): Promise<BuiltFile | null> {
    const name = address === '/' ? 'index.html' : address.slice(1)
    const type = types[extname(name)]
    if (!this.names.has(name) || !type) return null
    return { bytes: await readFile(join(this.folder, name)), type }
  }
}

/** Names with forward slashes. Folder by folder, since an archive of Electron's knows no other way. */
async function namesIn(folder: string, under: string): Promise<string[]> {
  const entries = await readdir(join(folder, under), { withFileTypes: true })
  const found = entries.map(async (entry) => {
    const name = under === '' ? entry.name : `${under}/${entry.name}`
    return entry.isDirectory() ? namesIn(folder, name) : [name]
  })
  return (await Promise.all(found)).flat()
}
