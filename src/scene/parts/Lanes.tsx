/** Lanes: the strip of road or rail with its centre line, and over it the height that must stay free. */
import { memo, useEffect, useMemo } from 'react'
import type { LaneObstacle } from '../../plan/types'
import { useApp } from '../../state/store'
import { usePlaneDrag } from '../handles/plane-drag'
import { Ink } from '../Ink'
import { Matte } from '../Matte'
import { objectName } from '../names'
import { usePalette } from '../palette'
import { picks, useMark } from '../pick'
import { useSceneState } from '../scene-state'
import { chain, facets } from '../shapes/solid'
import { levelStrip, stripBody, stripBodyEdges, stripTriangles } from '../shapes/strip'

/** The strip lies this far over the ground it may lie on, m, so that the two surfaces do not flicker. */
const LIFT = 0.02

export function Lanes() {
  const obstacles = useApp((s) => s.plan.obstacles)
  const hidden = useApp((s) => s.hidden)
  return obstacles.map((o) =>
    o.kind === 'lane' && !hidden.includes(o.id) ? <Lane key={o.id} lane={o} /> : null,
  )
}

const Lane = memo(function Lane({ lane }: { lane: LaneObstacle }) {
  const palette = usePalette()
  const ref = useMemo(() => ({ kind: 'obstacle' as const, id: lane.id }), [lane.id])
  const mark = useMark(ref)
  const handlers = useMemo(() => picks(ref), [ref])
  const drag = usePlaneDrag(ref)
  const under = useSceneState((s) => s.under)
  const shape = useMemo(() => laneShape(lane), [lane])
  useEffect(
    () => () => {
      shape.strip.dispose()
      shape.body.dispose()
    },
    [shape],
  )
  return (
    <>
      <mesh name={objectName(ref)} geometry={shape.strip} renderOrder={-6} {...handlers} onPointerDown={drag}>
        <Matte color={palette.road} opacity={under ? 0.12 : 1} bothSides />
      </mesh>
      <Ink points={shape.centre} color={palette.paper} width={2} dash={1.2} order={-5} />
      <mesh geometry={shape.body} renderOrder={1} raycast={() => {}}>
        <Matte color={palette.road} opacity={0.13} bothSides />
      </mesh>
      <Ink
        points={shape.edges}
        color={mark === 'none' ? palette.quiet : palette.accent}
        opacity={mark === 'none' ? 0.55 : 1}
        width={mark === 'none' ? 1 : 2}
      />
    </>
  )
})

function laneShape({ path, width, clearHeight }: LaneObstacle) {
  const strip = levelStrip(path, width)
  return {
    strip: facets(stripTriangles(strip, LIFT)),
    body: facets(stripBody(strip, clearHeight)),
    edges: stripBodyEdges(strip, clearHeight),
    centre: chain(path.map(([x, y, z]) => [x, y, z + 2 * LIFT])),
  }
}
