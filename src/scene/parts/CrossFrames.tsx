/** Bracing between girders: diagonals and bottom strut of each cross-frame; what a room enters is seen through, in colour. */
import { memo, useEffect, useMemo } from 'react'
import { type Bar, crossFrameBars } from '../../geometry/gaps/girder-solid'
import { useApp } from '../../state/store'
import { Ink } from '../Ink'
import { Matte } from '../Matte'
import { objectName } from '../names'
import { usePalette } from '../palette'
import { picks, useMark } from '../pick'
import { useClash } from '../pictures'
import { barsGeometry } from '../shapes/bars'
import { sharpEdges } from '../shapes/solid'

export function CrossFrames() {
  const plan = useApp((s) => s.plan)
  const hidden = useApp((s) => s.hidden)
  const { obstacles, girders } = plan
  // biome-ignore lint/correctness/useExhaustiveDependencies: the bars depend on these parts of the plan alone
  const frames = useMemo(
    () =>
      obstacles.flatMap((o) => {
        const bars = o.kind === 'cross-frame' ? crossFrameBars(plan, o) : null
        return bars ? [{ id: o.id, bars }] : []
      }),
    [obstacles, girders],
  )
  return frames
    .filter((f) => !hidden.includes(f.id))
    .map((f) => <CrossFrame key={f.id} id={f.id} bars={f.bars} />)
}

const CrossFrame = memo(function CrossFrame({ id, bars }: { id: string; bars: readonly Bar[] }) {
  const palette = usePalette()
  const ref = useMemo(() => ({ kind: 'obstacle' as const, id }), [id])
  const mark = useMark(ref)
  const clash = useClash(id)
  const plain = mark === 'none'
  const handlers = useMemo(() => picks(ref), [ref])
  const geometry = useMemo(() => barsGeometry(bars), [bars])
  const edges = useMemo(() => sharpEdges(geometry), [geometry])
  useEffect(() => () => geometry.dispose(), [geometry])
  return (
    <>
      <mesh name={objectName(ref)} geometry={geometry} {...handlers}>
        <Matte color={clash ? palette.fails : palette.steel} opacity={clash ? 0.5 : 1} />
      </mesh>
      <Ink
        points={edges}
        color={plain ? (clash ? palette.fails : palette.ink) : palette.accent}
        opacity={plain && !clash ? 0.5 : 1}
        width={clash ? 3 : plain ? 1 : 2}
      />
    </>
  )
})
