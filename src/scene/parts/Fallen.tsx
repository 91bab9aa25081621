/** The body of the line's governing fall, hanging to scale under the sagged rope by its connector. */
import { useEffect, useMemo } from 'react'
import type { Vec3 } from '../../plan/types'
import { useApp } from '../../state/store'
import { useAside } from '../compare/stepped-aside'
import { Ink } from '../Ink'
import { fallingName } from '../names'
import { usePalette } from '../palette'
import { useFocusDetail } from '../pictures'
import { useSceneState } from '../scene-state'
import { D_RING_PART, figure } from '../shapes/figure'

export function Fallen() {
  const detail = useFocusDetail()
  const playing = useSceneState((s) => s.playing)
  const worker = useApp((s) => s.plan.workers.find((w) => w.id === detail?.governing?.worker))
  const aside = useAside()
  if (detail && aside.includes(detail.id)) return null
  if (playing || !detail?.hangingAt || !detail.dRingAt || !detail.feetAt || !worker) return null
  return (
    <group name={fallingName(detail.id)}>
      <Connector from={detail.hangingAt} to={detail.dRingAt} />
      <Hanging feet={detail.feetAt} dRing={worker.dRingHeight} />
    </group>
  )
}

function Connector({ from, to }: { from: Vec3; to: Vec3 }) {
  const { ink } = usePalette()
  const points = useMemo(() => [...from, ...to], [from, to])
  return <Ink points={points} color={ink} width={1.75} />
}

function Hanging({ feet, dRing }: { feet: Vec3; dRing: number }) {
  const { ink } = usePalette()
  const body = useMemo(() => figure('hanging'), [])
  useEffect(() => () => body.dispose(), [body])
  const tall = dRing / D_RING_PART
  return (
    <mesh geometry={body} position={feet} scale={tall} raycast={() => {}}>
      <meshLambertMaterial color={ink} />
    </mesh>
  )
}
