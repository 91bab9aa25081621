/** Which commands the context menu offers for what is selected. */
import type { AppState } from '../../state/store'

const byKind: Record<string, string[]> = {
  girder: ['rig.lineOnGirder', 'site.copyGirder', 'site.addLoops', 'site.loopTable', 'site.addCrossFrame'],
  'loop-row': [],
  line: ['rig.addStanchion', 'rig.addWorker', 'rig.copyLine', 'rig.rescue'],
  stanchion: ['edit.nudgeBack', 'edit.nudgeOn', 'rig.addTieBack', 'rig.addStanchion'],
  'tie-back': ['edit.nudgeBack', 'edit.nudgeOn'],
  worker: [],
  obstacle: ['edit.turnLeft', 'edit.turnRight'],
  deck: ['edit.turnLeft', 'edit.turnRight'],
}

const always = [
  'edit.type',
  'edit.duplicate',
  'edit.cut',
  'edit.copy',
  'edit.paste',
  'look.hide',
  'look.lock',
  'camera.selection',
  'edit.delete',
]
const nothing = [
  'edit.paste',
  'site.drawGirder',
  'rig.drawLine',
  'site.addBox',
  'camera.home',
  'look.showAll',
  'edit.undo',
]

export function contextCommands(s: AppState): string[] {
  if (s.selection.length === 0) return nothing
  const kinds = [...new Set(s.selection.map((r) => r.kind))]
  const own =
    kinds.length === 1
      ? (byKind[kinds[0] ?? ''] ?? [])
      : s.selection.every((r) => r.kind === 'girder')
        ? (byKind.girder ?? [])
        : []
  return [...own, ...always]
}
