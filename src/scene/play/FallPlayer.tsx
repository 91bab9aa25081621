/**
 * A fall in time, from the solver's own history: rope, connectors and bodies move to scale. Every picture is written
 * straight into the drawn arrays; React sees nothing of it.
 */
import { useThree } from '@react-three/fiber'
import { useEffect, useMemo, useRef } from 'react'
import type { Group } from 'three'
import type { Vec3, Worker } from '../../plan/types'
import type { FallHistory } from '../../solver/time/types'
import type { Playhead } from '../../state/fall/playhead'
import { type InkMesh, inkMesh } from '../Ink'
import { useNote } from '../labels/notes'
import { usePalette } from '../palette'
import { sceneState } from '../scene-state'
import { D_RING_PART, figure } from '../shapes/figure'
import { ribbonGeometry, setSegments } from '../shapes/ribbon'
import { styleRibbon } from '../shapes/ribbon-material'
import { emptyPicture, type FallPicture, fillPicture } from './frame-at'
import { unrollAlong } from './unroll'

export interface FallPlayerProps {
  history: FallHistory
  /** Heads of the line's stanchions in order. */
  heads: readonly Vec3[]
  /** Who falls, in the history's order. */
  workers: readonly Worker[]
  playhead: Playhead
  /** Of the rope's movement; above 1 it is written on the picture. */
  exaggerate?: number
}

export function FallPlayer({ history, heads, workers, playhead, exaggerate = 1 }: FallPlayerProps) {
  const { ink } = usePalette()
  const invalidate = useThree((s) => s.invalidate)
  const rope = useSegments(history.nodes - 1, ink, 2.5)
  const connectors = useSegments(history.workers, ink, 1.75)
  const bodies = useRef<Group>(null)
  const body = useMemo(() => figure('hanging'), [])
  useEffect(() => () => body.dispose(), [body])
  useEffect(() => {
    sceneState.setState({ playing: true })
    return () => sceneState.setState({ playing: false })
  }, [])
  useNote('exaggerated', exaggerate === 1 ? null : `Rope movement drawn ${exaggerate} times as large`)
  useEffect(() => {
    const picture = emptyPicture(history)
    const unroll = unrollAlong(heads)
    const show = (): void => {
      fillPicture(picture, history, playhead.get(), unroll, exaggerate)
      drawRope(rope, picture)
      drawConnectors(connectors, picture)
      hangBodies(bodies.current, picture, workers)
      invalidate()
    }
    show()
    return playhead.subscribe(show)
  }, [history, heads, workers, playhead, exaggerate, rope, connectors, invalidate])
  return (
    <group name="fall">
      <primitive object={rope.line} name="fall:rope" />
      <primitive object={connectors.line} name="fall:connectors" />
      <group ref={bodies} name="fall:bodies">
        {workers.map((w) => (
          <mesh
            key={w.id}
            name={`fall:${w.id}`}
            geometry={body}
            scale={w.dRingHeight / D_RING_PART}
            raycast={() => {}}
          >
            <meshLambertMaterial color={ink} />
          </mesh>
        ))}
      </group>
    </group>
  )
}

interface Segments {
  line: InkMesh
  /** Ends of the segments, as they are drawn next. */
  ends: Float32Array
}

/** Inked segments whose ends are rewritten in place. */
function useSegments(count: number, color: string, width: number): Segments {
  const made = useMemo(() => {
    const room = Math.max(1, count)
    const line = inkMesh(ribbonGeometry(room))
    line.frustumCulled = false
    return { line, ends: new Float32Array(room * 6) }
  }, [count])
  useEffect(
    () => () => {
      made.line.geometry.dispose()
      made.line.material.dispose()
    },
    [made],
  )
  styleRibbon(made.line.material, { color, width, opacity: 1, dash: 0, through: false })
  return made
}

function drawRope({ line, ends }: Segments, { rope }: FallPicture): void {
  for (let i = 0; i + 3 < rope.length; i += 3) ends.set(rope.subarray(i, i + 6), i * 2)
  setSegments(line.geometry, ends)
}

function drawConnectors({ line, ends }: Segments, { rings, ties }: FallPicture): void {
  for (let i = 0; i < rings.length; i += 3) {
    ends.set(ties.subarray(i, i + 3), i * 2)
    ends.set(rings.subarray(i, i + 3), i * 2 + 3)
  }
  setSegments(line.geometry, ends)
}

function hangBodies(group: Group | null, { rings }: FallPicture, workers: readonly Worker[]): void {
  group?.children.forEach((body, w) => {
    body.position.set(rings[w * 3]!, rings[w * 3 + 1]!, rings[w * 3 + 2]! - (workers[w]?.dRingHeight ?? 0))
  })
}
