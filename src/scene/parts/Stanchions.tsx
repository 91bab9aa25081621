/** The stanchions of every line: four instanced meshes, however many there are, and one unseen grip for each. */
import { useLayoutEffect, useMemo, useRef } from 'react'
import {
  BoxGeometry,
  type BufferGeometry,
  Color,
  CylinderGeometry,
  type InstancedMesh,
  SphereGeometry,
} from 'three'
import { headHeight } from '../../geometry/line'
import { touchesRef } from '../../state/refs'
import { useApp } from '../../state/store'
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
  const mesh = useRef<InstancedMesh>(null)
  useLayoutEffect(() => {
    mine.forEach((p, i) => {
      mesh.current!.setMatrixAt(i, p.matrix)
    })
    mesh.current!.instanceMatrix.needsUpdate = true
    mesh.current!.computeBoundingSphere()
  }, [mine])
  usePieceColors(mesh, mine)
  return (
    <instancedMesh
      key={mine.length}
      ref={mesh}
      name={`stanchions:${line}:${piece}`}
      args={[bodies[piece], undefined, mine.length]}
      raycast={() => {}}
    >
      <meshLambertMaterial />
    </instancedMesh>
  )
}

function usePieceColors(mesh: React.RefObject<InstancedMesh | null>, mine: readonly Placed[]): void {
  const { ink, steel, accent } = usePalette()
  const selection = useApp((s) => s.selection)
  const hover = useApp((s) => s.hover)
  useLayoutEffect(() => {
    const plain = new Color(steel).lerp(new Color(ink), 0.55)
    const marked = new Color(accent)
    const lit = hover ? [...selection, hover] : selection
    mine.forEach((p, i) => {
      mesh.current!.setColorAt(i, touchesRef(lit, { kind: 'stanchion', id: p.of }) ? marked : plain)
    })
    if (mesh.current!.instanceColor) mesh.current!.instanceColor.needsUpdate = true
  }, [mesh, mine, ink, steel, accent, selection, hover])
}
