/** A model file placed as an obstacle: kept beside the plan, so that the plan names it by a relative path. */
import { getDesk } from '../../desk/desk'
import type { TriangleSoup } from '../../models/types'
import type { Vec3 } from '../../plan/types'
import { tell } from '../ask'
import { addAndSelect } from '../commands/add'
import { addObstacle, groundAt, siteMiddle } from '../edits/obstacle-edits'
import { setModel } from '../models/model-store'
import { app } from '../store'

/** Asks for a model file, then how it is to be understood. */
export async function addMesh(): Promise<void> {
  const picked = await getDesk().pickFile('mesh')
  if (picked.ok)
    app.setState({ dialog: { kind: 'model', name: picked.value.name, bytes: picked.value.bytes } })
  else if (picked.code !== 'cancelled') tell(picked.why, 'fails')
}

/** How a person says that a model is to be understood. */
export interface ModelPlacing {
  /** Metres for one unit of the file. */
  scale: number
  upAxis: 'y' | 'z'
  /** At the file's own coordinates; otherwise on the ground in the middle of the site. */
  ownPlace: boolean
}

/** Size of a model along the plan's axes, and its lowest corner, m. */
export function placedBounds(soup: TriangleSoup, { scale, upAxis }: ModelPlacing): { low: Vec3; size: Vec3 } {
  const [l, h] = [soup.low, soup.high]
  const low: Vec3 = upAxis === 'z' ? l : [l[0], -h[2], l[1]]
  const high: Vec3 = upAxis === 'z' ? h : [h[0], -l[2], h[1]]
  return {
    low: low.map((v) => v * scale) as Vec3,
    size: low.map((v, k) => (high[k]! - v) * scale) as Vec3,
  }
}

/** Keeps the file beside the plan and places it. Returns why it could not, or null. */
export async function placeModel(
  name: string,
  bytes: Uint8Array,
  soup: TriangleSoup,
  placing: ModelPlacing,
): Promise<string | null> {
  const kept = await getDesk().keepMesh(app.getState().file.id, { name, bytes })
  if (!kept.ok) return kept.why
  setModel(kept.value, { state: 'read', soup })
  const id = addAndSelect('obstacle', 'add a model', (plan) => {
    const { low, size } = placedBounds(soup, placing)
    const [x, y] = siteMiddle(plan)
    const at: Vec3 = placing.ownPlace
      ? [0, 0, 0]
      : [x - low[0] - size[0] / 2, y - low[1] - size[1] / 2, groundAt(plan) - low[2]]
    const { scale, upAxis } = placing
    const shape = { kind: 'mesh' as const, file: kept.value, at, scale, upAxis, fileHash: soup.hash }
    return addObstacle(plan, shape, name.replace(/\.[^.]*$/, ''))
  })
  return id ? null : 'No plan can hold it so: its place or its size is none on a site. Choose other units.'
}
