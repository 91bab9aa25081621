/** Every girder as the solid of its section with inked edges, and its loops on it. */
import { memo, useEffect, useMemo } from 'react'
import { girderFrame } from '../../geometry/girder'
import type { Girder } from '../../plan/types'
import { useApp } from '../../state/store'
import { usePlaneDrag } from '../handles/plane-drag'
import { Ink } from '../Ink'
import { Matte } from '../Matte'
import { objectName } from '../names'
import { usePalette } from '../palette'
import { picks, useHidden, useMark } from '../pick'
import { girderMatrix } from '../place'
import { girderEdges, girderSolid } from '../shapes/section'
import { Loops } from './Loops'

export function Girders() {
  const girders = useApp((s) => s.plan.girders)
  return girders.map((g) => <OneGirder key={g.id} girder={g} />)
}

const OneGirder = memo(function OneGirder({ girder }: { girder: Girder }) {
  const matrix = useMemo(() => girderMatrix(girder), [girder])
  const hidden = useHidden(girder.id)
  return (
    <group matrix={matrix} matrixAutoUpdate={false} visible={!hidden}>
      {!hidden && <Body girder={girder} />}
      {girder.loops.map((row) => (
        <Loops key={row.id} row={row} />
      ))}
    </group>
  )
})

function Body({ girder }: { girder: Girder }) {
  const palette = usePalette()
  const ref = useMemo(() => ({ kind: 'girder' as const, id: girder.id }), [girder.id])
  const mark = useMark(ref)
  const handlers = useMemo(() => picks(ref), [ref])
  const drag = usePlaneDrag(ref)
  const { section } = girder
  const { length } = girderFrame(girder)
  const solid = useMemo(() => girderSolid(section, length), [section, length])
  const edges = useMemo(() => girderEdges(section, length), [section, length])
  useEffect(() => () => solid.dispose(), [solid])
  const color = girder.material === 'steel' ? palette.steel : palette.concrete
  return (
    <>
      <mesh name={objectName(ref)} geometry={solid} {...handlers} onPointerDown={drag}>
        <Matte color={color} />
      </mesh>
      <Ink
        points={edges}
        color={mark === 'none' ? palette.ink : palette.accent}
        opacity={mark === 'none' ? 0.55 : 1}
        width={mark === 'selected' ? 2.25 : mark === 'hover' ? 1.75 : 1}
      />
    </>
  )
}
