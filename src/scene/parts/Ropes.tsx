/** Wire ropes as ink: installed on every line; on the line looked at also the sagged rope of its governing fall. */
import { memo, useMemo } from 'react'
import type { LineDetail } from '../../study/details'
import { useAside } from '../compare/stepped-aside'
import { RopeGrip } from '../handles/RopeGrip'
import { Ink } from '../Ink'
import { ropeName } from '../names'
import { usePalette } from '../palette'
import { useMark } from '../pick'
import { useFocusLine, useLineDetails } from '../pictures'
import { useSceneState } from '../scene-state'
import { chain } from '../shapes/solid'

export function Ropes() {
  const details = useLineDetails()
  const focus = useFocusLine()
  const aside = useAside()
  return details
    .filter((d) => !aside.includes(d.id))
    .map((d) => <Rope key={d.id} detail={d} focused={d.id === focus} />)
}

const Rope = memo(function Rope({ detail, focused }: { detail: LineDetail; focused: boolean }) {
  const { ink, accent } = usePalette()
  const mark = useMark({ kind: 'line', id: detail.id })
  const installed = useMemo(() => chain(detail.installedRope), [detail.installedRope])
  const sagged = useMemo(() => chain(detail.saggedRope), [detail.saggedRope])
  const playing = useSceneState((s) => s.playing)
  const both = focused && sagged.length > 0
  const color = mark === 'none' ? ink : accent
  return (
    <>
      <Ink
        name={ropeName(detail.id)}
        points={installed}
        color={color}
        width={both ? 1 : 2}
        opacity={both ? 0.55 : 1}
      />
      {both && !playing && (
        <Ink name={`${ropeName(detail.id)}:sagged`} points={sagged} color={color} width={2.5} />
      )}
      <RopeGrip detail={detail} />
    </>
  )
})
