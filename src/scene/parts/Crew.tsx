/** Workers who stand on their lines, hooked on: one instanced figure for all of them, scaled to each. */
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react'
import { type InstancedMesh, Matrix4, Vector3 } from 'three'
import { girderFrame } from '../../geometry/girder'
import { useApp } from '../../state/store'
import { Ink } from '../Ink'
import { usePalette } from '../palette'
import { useFocusLine, useLineDetails } from '../pictures'
import { useSceneState } from '../scene-state'
import { type Standing, standingCrew } from '../shapes/crew'
import { D_RING_PART, figure } from '../shapes/figure'

export function Crew() {
  const { ink } = usePalette()
  const crew = useCrew()
  const connectors = useMemo(() => crew.flatMap((c) => [...c.dRing, ...c.rope]), [crew])
  return (
    <>
      <Figures crew={crew} />
      <Ink points={connectors} color={ink} width={1.25} />
    </>
  )
}

function useCrew(): Standing[] {
  const plan = useApp((s) => s.plan)
  const hidden = useApp((s) => s.hidden)
  const playing = useSceneState((s) => s.playing)
  const details = useLineDetails()
  const focus = useFocusLine()
  const { lines, girders, workers } = plan
  // biome-ignore lint/correctness/useExhaustiveDependencies: the crew depends on these parts of the plan alone
  return useMemo(
    () =>
      lines.flatMap((line) => {
        const detail = details.find((d) => d.id === line.id)
        const fallen = line.id === focus ? (detail?.governing?.worker ?? null) : null
        return playing && line.id === focus ? [] : standingCrew(plan, line, detail, fallen)
      }),
    [lines, girders, workers, details, focus, playing],
  ).filter((c) => !hidden.includes(c.worker.id))
}

function Figures({ crew }: { crew: readonly Standing[] }) {
  const { ink } = usePalette()
  const girders = useApp((s) => s.plan.girders)
  const lines = useApp((s) => s.plan.lines)
  const body = useMemo(() => figure('standing'), [])
  useEffect(() => () => body.dispose(), [body])
  const mesh = useRef<InstancedMesh>(null)
  useLayoutEffect(() => {
    crew.forEach((c, i) => {
      const on = lines.find((l) => l.id === c.worker.line)?.girder
      const girder = girders.find((g) => g.id === on)
      const { along } = girder ? girderFrame(girder) : { along: [1, 0, 0] }
      mesh.current!.setMatrixAt(i, standing(c, Math.atan2(along[1]!, along[0]!)))
    })
    mesh.current!.instanceMatrix.needsUpdate = true
    mesh.current!.computeBoundingSphere()
  }, [crew, girders, lines])
  return (
    <instancedMesh
      key={crew.length}
      ref={mesh}
      name="crew"
      args={[body, undefined, crew.length]}
      raycast={() => {}}
    >
      <meshLambertMaterial color={ink} />
    </instancedMesh>
  )
}

function standing({ feet, worker }: Standing, heading: number): Matrix4 {
  const tall = worker.dRingHeight / D_RING_PART
  return new Matrix4()
    .makeTranslation(...feet)
    .multiply(new Matrix4().makeRotationZ(heading))
    .scale(new Vector3(tall, tall, tall))
}
