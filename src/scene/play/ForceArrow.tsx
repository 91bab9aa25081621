/** A force drawn to scale: an arrow as long as it is strong, with its figure at its head. */
import { useMemo } from 'react'
import { Matrix4, Quaternion, Vector3 } from 'three'
import type { Vec3 } from '../../plan/types'
import { formatForce } from '../../plan/units'
import { useApp } from '../../state/store'
import { Ink } from '../Ink'
import { useNote } from '../labels/notes'
import { useLabel } from '../labels/registry'
import { usePalette } from '../palette'

export interface ForceArrowProps {
  id: string
  /** Where the force acts. */
  at: Vec3
  /** Its direction; need not be of unit length. */
  toward: Vec3
  /** N; null (not known) draws nothing. */
  newtons: number | null
  /** Length of the arrow for one newton, m. */
  metresPerNewton: number
  /** What pulls or pushes, before the figure. */
  text?: string
  tone?: 'ink' | 'accent' | 'fails' | 'strap'
}

/** Below this length an arrow is only its head, m. */
const HEAD = 0.16

export function ForceArrow({
  id,
  at,
  toward,
  newtons,
  metresPerNewton,
  text = '',
  tone = 'ink',
}: ForceArrowProps) {
  const color = usePalette()[tone]
  const units = useApp((s) => s.units)
  const long = Math.abs(newtons ?? 0) * metresPerNewton
  const way = useMemo(
    () => new Vector3(...toward).normalize().multiplyScalar(Math.sign(newtons ?? 1)),
    [toward, newtons],
  )
  const tip = useMemo(() => new Vector3(...at).addScaledVector(way, long).toArray() as Vec3, [at, way, long])
  const shaft = useMemo(() => {
    const end = new Vector3(...at).addScaledVector(way, Math.max(0, long - HEAD * 0.8))
    return [...at, ...end.toArray()]
  }, [at, way, long])
  const known = newtons !== null && long > 0
  const figure = known ? `${text} ${formatForce(Math.abs(newtons), units)}`.trim() : ''
  useLabel(`force:${id}`, known ? { at: tip, text: figure, tone: 'force', rank: 80, shift: [0, -14] } : null)
  if (!known) return null
  return (
    <group name={`force:${id}`}>
      <Ink points={shaft} color={color} width={3.5} through order={20} />
      <mesh matrix={headMatrix(tip, way)} matrixAutoUpdate={false} renderOrder={20} raycast={() => {}}>
        <coneGeometry args={[HEAD * 0.32, HEAD, 12]} />
        <meshBasicMaterial color={color} depthTest={false} transparent />
      </mesh>
    </group>
  )
}

/** A cone that points along y, moved so that its tip lies at `tip`. */
function headMatrix(tip: Vec3, way: Vector3): Matrix4 {
  const turn = new Quaternion().setFromUnitVectors(new Vector3(0, 1, 0), way)
  const middle = new Vector3(...tip).addScaledVector(way, -HEAD / 2)
  return new Matrix4().compose(middle, turn, new Vector3(1, 1, 1))
}

/** Writes on the picture to which scale its forces are drawn: for one metre the force that is as long. */
export function ForceScale({ metresPerNewton }: { metresPerNewton: number }) {
  const units = useApp((s) => s.units)
  const metre = units === 'us' ? 0.3048 : 1
  const name = units === 'us' ? '1 ft' : '1 m'
  useNote('force-scale', `Forces to scale: ${name} is ${formatForce(metre / metresPerNewton, units)}`)
  return null
}
