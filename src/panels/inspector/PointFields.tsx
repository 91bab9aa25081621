/** A point's three figures, each to type. */
import type { JSX } from 'react'
import type { Vec3 } from '../../plan/types'
import { QuantityField } from '../fields/QuantityField'

const axes = ['x', 'y', 'elevation'] as const

export function PointFields(props: {
  title: string
  point: Vec3
  onTake: (point: Vec3) => string | null
}): JSX.Element {
  return (
    <>
      {axes.map((axis, i) => (
        <QuantityField
          key={axis}
          label={`${props.title} ${axis}`}
          unit="m"
          value={props.point[i] ?? 0}
          least={-1e5}
          most={1e5}
          onTake={(v) => props.onTake(props.point.map((old, j) => (j === i ? v : old)) as Vec3)}
        />
      ))}
    </>
  )
}
