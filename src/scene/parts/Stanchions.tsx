/** The stanchions of every line: four meshes, however many there are, and one unseen grip for each. */
import { useMemo } from 'react'
import { BoxGeometry, type BufferGeometry, Color, CylinderGeometry, SphereGeometry } from 'three'
import { headHeight } from '../../geometry/line'
import { touchesRef } from '../../state/refs'
import { useApp } from '../../state/store'
import { Copies } from '../Copies'
import { useNotShown } from '../compare/stepped-aside'
import { StanchionGrip } from '../handles/StanchionGrip'
import { usePalette } from '../palette'
import { type Piece, type Placed, stanchionPieces } from '../shapes/stanchion'
import { eachLine } from './EachLine'

const bodies: Record<Piece, BufferGeometry> = {
  round: new CylinderGeometry(1, 1, 1, 10).rotateX(Math.PI / 2).translate(0, 0, 0.5),
  tube: new CylinderGeometry(1, 1, 1, 10).rotateZ(Math.PI / 2),
  block: new BoxGeometry(1, 1, 1),
  head: new SphereGeometry(0.062, 12, 8),
}
const pieces = Object.keys(bodies) as Piece[]

export const Stanchions = eachLine(function StanchionsOfLine({ line, girder, parts }) {
  const hidden = useNotShown()
  const placed = useMemo(() => stanchionPieces(line, girder, parts), [line, girder, parts])
  const shown = useMemo(() => placed.filter((p) => !hidden.includes(p.of)), [placed, hidden])
  return (
    <>
      {pieces.map((piece) => (
        <Pieces key={piece} line={line.id} piece={piece} placed={shown} />
      ))}
      {line.stanchions
        .filter((s) => !hidden.includes(s.id))
        .map((s) => (
          <StanchionGrip key={s.id} girder={girder} stanchion={s} height={headHeight({ parts }, s) ?? 1} />
        ))}
    </>
  )
})

function Pieces({ line, piece, placed }: { line: string; piece: Piece; placed: readonly Placed[] }) {
  const mine = useMemo(() => placed.filter((p) => p.piece === piece), [placed, piece])
  const places = useMemo(() => mine.map((p) => p.matrix), [mine])
  const colors = usePieceColors(mine)
  return <Copies name={`stanchions:${line}:${piece}`} body={bodies[piece]} places={places} color={colors} />
}

function usePieceColors(mine: readonly Placed[]): Color[] {
  const { ink, steel, accent } = usePalette()
  const selection = useApp((s) => s.selection)
  const hover = useApp((s) => s.hover)
  return useMemo(() => {
    const plain = new Color(steel).lerp(new Color(ink), 0.55)
    const marked = new Color(accent)
    const lit = hover ? [...selection, hover] : selection
    return mine.map((p) => (touchesRef(lit, { kind: 'stanchion', id: p.of }) ? marked : plain))
  }, [mine, ink, steel, accent, selection, hover])
}
