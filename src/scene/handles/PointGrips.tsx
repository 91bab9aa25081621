/** The ends of the girder or the corners of the deck that is selected, as knobs to take hold of in Site. */
import type { ThreeEvent } from '@react-three/fiber'
import { useMemo } from 'react'
import { MeshBasicMaterial, SphereGeometry } from 'three'
import type { Vec3 } from '../../plan/types'
import { pointsOf } from '../../state/edits/transform'
import { type Ref, refKey } from '../../state/refs'
import { beginShift, cancelShift, endShift, pointTo } from '../../state/shift'
import { useApp } from '../../state/store'
import { typeBeside } from '../../state/typed/typing'
import { usePalette } from '../palette'
import { CLICK_SLACK, GRIP } from '../pick'
import { tellDrag } from '../scene-state'
import { type Drag, startDrag, useView } from './drag'
import { onLevel } from './rays'

const knob = new SphereGeometry(1, 12, 8)

/** Size of a knob, m: a little wider than a girder's flange is thick. */
const SIZE = 0.17

export function PointGrips() {
  const one = useApp((s) => (s.selection.length === 1 ? s.selection[0] : undefined))
  const free = useApp((s) => one !== undefined && !s.locked.includes(one.id) && !s.hidden.includes(one.id))
  const placing = useApp((s) => s.view === 'site' && s.tool.kind === 'select')
  const plan = useApp((s) => s.plan)
  const { accent } = usePalette()
  const material = useMemo(() => new MeshBasicMaterial({ color: accent }), [accent])
  if (!one || !free || !placing || (one.kind !== 'girder' && one.kind !== 'deck')) return null
  return pointsOf(plan, one).map((at, i) => (
    <Knob key={`${refKey(one)} ${i}`} of={one} index={i} at={at} material={material} />
  ))
}

function Knob(props: { of: Ref; index: number; at: Vec3; material: MeshBasicMaterial }) {
  const { of, index, at, material } = props
  const view = useView()
  const elevation = at[2]
  const handlers = useMemo(
    () => ({
      onClick: (e: ThreeEvent<MouseEvent>) => {
        stay(e)
        const { clientX: x, clientY: y } = e.nativeEvent
        if (e.delta <= CLICK_SLACK) typeBeside(of, { x, y }, index)
      },
      onPointerOver: stay,
      onPointerDown: (e: ThreeEvent<PointerEvent>) => startDrag(e, view(), carry(of, index, elevation)),
    }),
    [of, index, elevation, view],
  )
  return (
    <mesh
      name={`point:${refKey(of)}:${index}`}
      geometry={knob}
      material={material}
      position={at}
      scale={SIZE}
      renderOrder={8}
      userData={GRIP}
      {...handlers}
    />
  )
}

/** A click on a knob is not one on what lies behind it. */
const stay = (e: ThreeEvent<MouseEvent>): void => e.stopPropagation()

const carry = (ref: Ref, index: number, elevation: number): Drag => ({
  begin: () => {
    beginShift(`move ${ref.kind === 'deck' ? 'a corner' : 'an end'} of ${ref.id}`)
    tellDrag(ref, null, index)
  },
  move: (ray, e) => {
    const at = onLevel(ray, elevation)
    if (at) tellDrag(ref, pointTo(ref, index, at, { shift: e.shiftKey, alt: e.altKey }), index)
  },
  end: () => {
    endShift()
    tellDrag(null)
  },
  cancel: () => {
    cancelShift()
    tellDrag(null)
  },
})
