/** Decks: further walking surfaces, as thin plates of their outline. */
import { memo, useEffect, useMemo } from 'react'
import { ExtrudeGeometry, Shape, Vector2 } from 'three'
import type { Deck } from '../../plan/types'
import { useApp } from '../../state/store'
import { usePlaneDrag } from '../handles/plane-drag'
import { Ink } from '../Ink'
import { Matte } from '../Matte'
import { objectName } from '../names'
import { usePalette } from '../palette'
import { picks, useMark } from '../pick'
import { sharpEdges } from '../shapes/solid'

/** Thickness of the plate in the picture, m; its top is the deck's elevation. */
const PLATE = 0.04

const none: Deck[] = []

export function Decks() {
  const decks = useApp((s) => s.plan.decks ?? none)
  const hidden = useApp((s) => s.hidden)
  return decks.map((d) =>
    hidden.includes(d.id) || d.outline.length < 3 ? null : <OneDeck key={d.id} deck={d} />,
  )
}

const OneDeck = memo(function OneDeck({ deck }: { deck: Deck }) {
  const palette = usePalette()
  const ref = useMemo(() => ({ kind: 'deck' as const, id: deck.id }), [deck.id])
  const mark = useMark(ref)
  const handlers = useMemo(() => picks(ref), [ref])
  const drag = usePlaneDrag(ref)
  const plate = useMemo(() => {
    const outline = new Shape(deck.outline.map(([x, y]) => new Vector2(x, y)))
    return new ExtrudeGeometry(outline, { depth: PLATE, bevelEnabled: false })
  }, [deck.outline])
  const edges = useMemo(() => sharpEdges(plate), [plate])
  useEffect(() => () => plate.dispose(), [plate])
  return (
    <group position={[0, 0, deck.elevation - PLATE]}>
      <mesh name={objectName(ref)} geometry={plate} {...handlers} onPointerDown={drag}>
        <Matte color={palette.concrete} />
      </mesh>
      <Ink
        points={edges}
        color={mark === 'none' ? palette.ink : palette.accent}
        opacity={mark === 'none' ? 0.5 : 1}
        width={mark === 'none' ? 1 : 2}
      />
    </group>
  )
})
