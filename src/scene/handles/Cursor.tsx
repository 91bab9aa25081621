/** Shows by the pointer's own shape what it could take hold of. */
import { useThree } from '@react-three/fiber'
import { useEffect } from 'react'
import { hasRef, type Ref } from '../../state/refs'
import { takenWith } from '../../state/shift'
import { useApp } from '../../state/store'
import { useSceneState } from '../scene-state'

export function Cursor() {
  const element = useThree((s) => s.gl.domElement)
  const hover = useApp((s) => s.hover)
  const selected = useApp((s) => s.hover !== null && hasRef(s.selection, s.hover))
  const selecting = useApp((s) => s.tool.kind === 'select')
  const dragging = useSceneState((s) => s.dragged !== null)
  useEffect(() => {
    if (selecting) element.style.cursor = dragging ? 'grabbing' : shapeFor(hover, selected)
  }, [element, hover, selected, selecting, dragging])
  return null
}

/** Posts and feet are taken at once; what stands about in plan once it is selected. */
function shapeFor(ref: Ref | null, selected: boolean): string {
  if (!ref) return ''
  if (ref.kind === 'stanchion' || (ref.kind === 'tie-back' && ref.foot)) return 'grab'
  return selected && takenWith(ref).length > 0 ? 'grab' : 'pointer'
}
