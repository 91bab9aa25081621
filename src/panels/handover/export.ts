/** Files out of the window, by the desk. */
import { zipSync } from 'fflate'
import { getDesk } from '../../desk/desk'
import type { HandoverFile } from '../../handover/files/hand-over'
import { fileName } from '../../handover/files/names'
import { tell } from '../../state/ask'
import { app } from '../../state/store'

const types: Record<string, string> = {
  pdf: 'application/pdf',
  zip: 'application/zip',
  svg: 'image/svg+xml',
  dxf: 'image/vnd.dxf',
  csv: 'text/csv',
  json: 'application/json',
  glb: 'model/gltf-binary',
}

export async function exportBytes(name: string, bytes: Uint8Array): Promise<void> {
  const type = types[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream'
  const said = await getDesk().exportFile(name, bytes, type)
  if (said.ok) tell(`${said.value} is written.`)
  else if (said.code !== 'cancelled') tell(said.why, 'fails')
}

/** One file as itself, several as one archive. */
export async function exportFiles(files: HandoverFile[], name: string): Promise<void> {
  const title = fileName(app.getState().plan.title)
  const [only] = files
  if (!only) tell('There is nothing to export for this plan.', 'look')
  else if (files.length === 1) await exportBytes(`${title}-${only.name.split('/').at(-1)}`, only.bytes)
  else
    await exportBytes(
      `${title}-${name}.zip`,
      zipSync(Object.fromEntries(files.map((f) => [f.name, f.bytes]))),
    )
}
