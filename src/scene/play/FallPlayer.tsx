/**
 * A fall in time, from the solver's own history: rope, connectors and bodies move to scale. Every picture is written
 * straight into the drawn arrays; React sees nothing of it.
 */
import { useThree } from '@react-three/fiber'
import { useEffect, useMemo, useRef } from 'react'
import type { Group, InstancedBufferGeometry, InterleavedBufferAttribute } from 'three'
import { LineMaterial } from 'three/addons/lines/LineMaterial.js'
import { LineSegments2 } from 'three/addons/lines/LineSegments2.js'
import { LineSegmentsGeometry } from 'three/addons/lines/LineSegmentsGeometry.js'
import type { Vec3, Worker } from '../../plan/types'
import type { FallHistory } from '../../solver/time/types'
import type { Playhead } from '../../state/fall/playhead'
import { useNote } from '../labels/notes'
import { usePalette } from '../palette'
import { sceneState } from '../scene-state'
import { D_RING_PART, figure } from '../shapes/figure'
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
      <primitive object={rope} name="fall:rope" />
      <primitive object={connectors} name="fall:connectors" />
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

/** Inked segments whose ends are rewritten in place. */
function useSegments(count: number, color: string, width: number): LineSegments2 {
  const line = useMemo(() => {
    const geometry = new LineSegmentsGeometry()
    geometry.setPositions(new Float32Array(Math.max(1, count) * 6))
    const made = new LineSegments2(geometry, new LineMaterial({ linewidth: width }))
    made.frustumCulled = false
    made.raycast = () => {}
    return made
  }, [count, width])
  useEffect(
    () => () => {
      line.geometry.dispose()
      line.material.dispose()
    },
    [line],
  )
  line.material.color.set(color)
  return line
}

function endsOf(line: LineSegments2): { array: Float32Array; done: () => void } {
  const geometry = line.geometry as InstancedBufferGeometry
  const { data } = geometry.getAttribute('instanceStart') as InterleavedBufferAttribute
  return {
    array: data.array as Float32Array,
    done: () => {
      data.needsUpdate = true
    },
  }
}

function drawRope(line: LineSegments2, { rope }: FallPicture): void {
  const { array, done } = endsOf(line)
  for (let i = 0; i + 3 < rope.length; i += 3) array.set(rope.subarray(i, i + 6), i * 2)
  done()
}

function drawConnectors(line: LineSegments2, { rings, ties }: FallPicture): void {
  const { array, done } = endsOf(line)
  for (let i = 0; i < rings.length; i += 3) {
    array.set(ties.subarray(i, i + 3), i * 2)
    array.set(rings.subarray(i, i + 3), i * 2 + 3)
  }
  done()
}

function hangBodies(group: Group | null, { rings }: FallPicture, workers: readonly Worker[]): void {
  group?.children.forEach((body, w) => {
    body.position.set(rings[w * 3]!, rings[w * 3 + 1]!, rings[w * 3 + 2]! - (workers[w]?.dRingHeight ?? 0))
  })
}
