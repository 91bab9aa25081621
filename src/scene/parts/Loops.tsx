/** The bent bars of one row, countable, drawn in the girder's own coordinates. */
import { memo, useEffect, useMemo } from 'react'
import { Matrix4 } from 'three'
import type { LoopRow } from '../../plan/types'
import { useApp } from '../../state/store'
import { Copies } from '../Copies'
import { objectName } from '../names'
import { usePalette } from '../palette'
import { useSceneState } from '../scene-state'
import { type BarFineness, loopBar } from '../shapes/loop-bar'

/**
 * Above this many loops in a plan, and always without a graphics processor, each is drawn with the fewest faces that still
 * look like a bar: all loops together are most of the picture's faces.
 */
const MANY_LOOPS = 700

const fine: BarFineness = { sides: 6, bend: 4 }
const plain: BarFineness = { sides: 3, bend: 1 }

export const Loops = memo(function Loops({ row }: { row: LoopRow }) {
  const { loop } = usePalette()
  const many = useApp((s) => countLoops(s.plan.girders) > MANY_LOOPS)
  const simple = useSceneState((s) => s.software !== false) || many
  const bar = useMemo(
    () => loopBar(row.height, row.barDiameter, simple ? plain : fine),
    [row.height, row.barDiameter, simple],
  )
  useEffect(() => () => bar.dispose(), [bar])
  const places = useMemo(() => placesOf(row), [row])
  return (
    <Copies name={objectName({ kind: 'loop-row', id: row.id })} body={bar} places={places} color={loop} />
  )
})

const countLoops = (girders: readonly { loops: readonly LoopRow[] }[]): number =>
  girders.reduce((sum, g) => sum + g.loops.reduce((n, r) => n + r.count, 0), 0)

const placesOf = ({ first, spacing, offset, count }: LoopRow): Matrix4[] =>
  Array.from({ length: count }, (_, i) => new Matrix4().makeTranslation(first + i * spacing, offset, 0))
