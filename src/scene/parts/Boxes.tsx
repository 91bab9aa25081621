/** Boxes: falsework, lifts, sheds; one that travels stands where its room is least, its path and ends as ghosts. */
import { memo, useMemo } from 'react'
import { BoxGeometry } from 'three'
import type { BoxObstacle, Vec3 } from '../../plan/types'
import { useApp } from '../../state/store'
import { usePlaneDrag } from '../handles/plane-drag'
import { Ink } from '../Ink'
import { Matte } from '../Matte'
import { objectName } from '../names'
import { usePalette } from '../palette'
import { picks, useMark } from '../pick'
import { useClash, useWorstPlace } from '../pictures'
import { useSceneState } from '../scene-state'
import { chain, sharpEdges } from '../shapes/solid'

export function Boxes() {
  const obstacles = useApp((s) => s.plan.obstacles)
  const hidden = useApp((s) => s.hidden)
  return obstacles.map((o) =>
    o.kind === 'box' && !hidden.includes(o.id) ? <Box key={o.id} box={o} /> : null,
  )
}

const cube = new BoxGeometry(1, 1, 1)
const cubeEdges = sharpEdges(cube)

const Box = memo(function Box({ box }: { box: BoxObstacle }) {
  const palette = usePalette()
  const ref = useMemo(() => ({ kind: 'obstacle' as const, id: box.id }), [box.id])
  const mark = useMark(ref)
  const handlers = useMemo(() => picks(ref), [ref])
  const drag = usePlaneDrag(ref)
  const worst = useWorstPlace(box.id)
  const clash = useClash(box.id)
  const under = useSceneState((s) => s.under)
  const turn = ((box.turn ?? 0) * Math.PI) / 180
  return (
    <>
      <group position={worst ?? box.center} rotation={[0, 0, turn]} scale={box.size}>
        <mesh name={objectName(ref)} geometry={cube} {...handlers} onPointerDown={drag}>
          <Matte color={palette.concrete} opacity={under ? 0.12 : clash ? 0.4 : 1} />
        </mesh>
        <Ink
          points={cubeEdges}
          color={mark === 'none' ? palette.ink : palette.accent}
          opacity={mark === 'none' ? 0.6 : 1}
          width={mark === 'none' ? 1 : 2}
        />
      </group>
      {box.travel && <Travel box={box} path={box.travel} turn={turn} />}
    </>
  )
})

function Travel({ box, path, turn }: { box: BoxObstacle; path: readonly Vec3[]; turn: number }) {
  const { compare } = usePalette()
  const line = useMemo(() => chain(path), [path])
  return (
    <>
      <Ink name={`path:${box.id}`} points={line} color={compare} width={1.5} dash={0.25} />
      {path.map((at, i) => (
        <group key={i} position={at} rotation={[0, 0, turn]} scale={box.size}>
          <Ink points={cubeEdges} color={compare} opacity={0.45} />
        </group>
      ))}
    </>
  )
}
