/** A model file placed as an obstacle: kept beside the plan, so that the plan names it by a relative path. */
import { getDesk } from '../../desk/desk'
import { tell } from '../ask'
import { addAndSelect } from '../commands/add'
import { addObstacle, groundAt, siteMiddle } from '../edits/obstacle-edits'
import { app } from '../store'

export async function addMesh(): Promise<void> {
  const desk = getDesk()
  const picked = await desk.pickFile('mesh')
  if (!picked.ok) {
    if (picked.code !== 'cancelled') tell(picked.why, 'fails')
    return
  }
  const kept = await desk.keepMesh(app.getState().file.id, picked.value)
  if (!kept.ok) {
    tell(kept.why, 'fails')
    return
  }
  addAndSelect('obstacle', 'add a model', (plan) => {
    const [x, y] = siteMiddle(plan)
    const name = picked.value.name.replace(/\.[^.]*$/, '')
    return addObstacle(plan, { kind: 'mesh', file: kept.value, at: [x, y, groundAt(plan)] }, name)
  })
}
