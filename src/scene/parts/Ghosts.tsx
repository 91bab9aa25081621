/** Figures of what is not there: what is being drawn, what a proposal would add, and lines as another plan has them. */
import { useMemo } from 'react'
import type { Vec3 } from '../../plan/types'
import { useApp } from '../../state/store'
import { OtherLines } from '../compare/OtherLines'
import { Ink } from '../Ink'
import { useLabel } from '../labels/registry'
import { usePalette } from '../palette'
import { chain } from '../shapes/solid'

export function Ghosts() {
  const ghost = useApp((s) => s.ghost)
  const { compare } = usePalette()
  const points = useMemo(() => {
    if (!ghost) return []
    const [first] = ghost.points
    return chain(ghost.closed && first ? [...ghost.points, first] : ghost.points)
  }, [ghost])
  const at = ghost?.points.at(-1) as Vec3 | undefined
  const text = ghost?.text ?? ''
  useLabel('ghost', at && text ? { at, text, tone: 'compare', rank: 95, shift: [0, -22] } : null)
  return (
    <>
      <Ink name="ghost" points={points} color={compare} width={2} dash={0.3} through order={8} />
      <OtherLines />
    </>
  )
}
