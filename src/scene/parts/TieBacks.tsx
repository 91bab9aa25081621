/** Tie-backs: flat bands with visible legs, and a grip on every foot. */
import { useEffect, useMemo } from 'react'
import { touchesRef } from '../../state/refs'
import { useApp } from '../../state/store'
import { useNotShown } from '../compare/stepped-aside'
import { FootGrip } from '../handles/FootGrip'
import { Ink } from '../Ink'
import { Matte } from '../Matte'
import { usePalette } from '../palette'
import { facets } from '../shapes/solid'
import { type StrapLeg, strapEdges, strapLegs, strapTriangles } from '../shapes/strap'
import { eachLine } from './EachLine'

export const TieBacks = eachLine(function TieBacksOfLine({ line, girder, parts }) {
  const hidden = useNotShown()
  const selection = useApp((s) => s.selection)
  const hover = useApp((s) => s.hover)
  const legs = useMemo(() => strapLegs(line, girder, parts), [line, girder, parts])
  const shown = useMemo(() => legs.filter((leg) => !hidden.includes(leg.tieBack)), [legs, hidden])
  const marked = useMemo(() => {
    const lit = hover ? [...selection, hover] : selection
    return shown.filter((leg) => touchesRef(lit, { kind: 'tie-back', id: leg.tieBack }))
  }, [shown, selection, hover])
  return (
    <>
      <Bands name={`straps:${line.id}`} legs={shown} />
      <Marked legs={marked} />
      {shown.map((leg) => (
        <FootGrip key={`${leg.tieBack}:${leg.foot}`} leg={leg} />
      ))}
    </>
  )
})

function Bands({ name, legs }: { name: string; legs: readonly StrapLeg[] }) {
  const { strap, ink } = usePalette()
  const solid = useMemo(() => facets(strapTriangles(legs)), [legs])
  const edges = useMemo(() => strapEdges(legs), [legs])
  const spines = useMemo(() => legs.flatMap(({ head, end }) => [...head, ...end]), [legs])
  useEffect(() => () => solid.dispose(), [solid])
  return (
    <>
      <mesh name={name} geometry={solid} raycast={() => {}}>
        <Matte color={strap} bothSides />
      </mesh>
      <Ink points={spines} color={strap} width={3.5} />
      <Ink points={edges} color={ink} opacity={0.45} />
    </>
  )
}

function Marked({ legs }: { legs: readonly StrapLeg[] }) {
  const { accent } = usePalette()
  const edges = useMemo(() => strapEdges(legs), [legs])
  return <Ink points={edges} color={accent} width={2.25} />
}
