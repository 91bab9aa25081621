/** Ground and water: a finite sheet under the site with a grid of 1 m or 5 ft, like squared paper laid below it. */
import { useMemo } from 'react'
import { DoubleSide } from 'three'
import type { GroundObstacle, WaterObstacle } from '../../plan/types'
import { useApp } from '../../state/store'
import { type Extent, extentOf, sitePoints } from '../extent'
import { Ink } from '../Ink'
import { objectName } from '../names'
import { usePalette } from '../palette'
import { picks, useMark } from '../pick'
import { useSceneState } from '../scene-state'
import { latticeLines, type Sheet, wholeSteps } from '../shapes/lattice'

/** Grid of the sheets, m. */
const GRID_STEP = { us: 1.524, si: 1 } as const

/** Past what stands on the site: at least this, m, and this part of the site's size. */
const BORDER = 6
const BORDER_PART = 0.3

export function Levels() {
  const plan = useApp((s) => s.plan)
  const hidden = useApp((s) => s.hidden)
  const { girders, decks, obstacles } = plan
  // biome-ignore lint/correctness/useExhaustiveDependencies: the extent depends on these parts of the plan alone
  const extent = useMemo(() => extentOf(sitePoints(plan)), [girders, decks, obstacles])
  const { min, max } = useMemo(() => bordered(extent), [extent])
  return obstacles.map((o) =>
    (o.kind === 'ground' || o.kind === 'water') && !hidden.includes(o.id) ? (
      <Level key={o.id} level={o} sheet={{ min, max, elevation: o.elevation }} />
    ) : null,
  )
}

function bordered(extent: Extent | null): Pick<Sheet, 'min' | 'max'> {
  const [x1, y1] = extent?.min ?? [-10, -10]
  const [x2, y2] = extent?.max ?? [10, 10]
  const border = Math.max(BORDER, BORDER_PART * Math.max(x2 - x1, y2 - y1))
  return { min: [x1 - border, y1 - border], max: [x2 + border, y2 + border] }
}

function Level({ level, sheet }: { level: GroundObstacle | WaterObstacle; sheet: Sheet }) {
  const palette = usePalette()
  const step = useApp((s) => GRID_STEP[s.units])
  const ref = useMemo(() => ({ kind: 'obstacle' as const, id: level.id }), [level.id])
  const mark = useMark(ref)
  const under = useSceneState((s) => s.under)
  const handlers = useMemo(() => picks(ref), [ref])
  const { min, max } = wholeSteps(sheet, step)
  const [x1, y1, x2, y2, z] = [min[0], min[1], max[0], max[1], sheet.elevation]
  const grid = useMemo(() => {
    const whole: Sheet = { min: [x1, y1], max: [x2, y2], elevation: z }
    return { fine: latticeLines(whole, step, 1, 5), firm: latticeLines(whole, step, 5) }
  }, [x1, y1, x2, y2, z, step])
  const border = useMemo(
    () => [x1, y1, z, x2, y1, z, x2, y1, z, x2, y2, z, x2, y2, z, x1, y2, z, x1, y2, z, x1, y1, z],
    [x1, y1, x2, y2, z],
  )
  const sheetColor = level.kind === 'water' ? palette.water : palette.ground
  return (
    <>
      <mesh
        name={objectName(ref)}
        position={[(x1 + x2) / 2, (y1 + y2) / 2, z]}
        renderOrder={level.kind === 'water' ? -9 : -10}
        {...handlers}
      >
        <planeGeometry args={[x2 - x1, y2 - y1]} />
        <meshBasicMaterial
          color={sheetColor}
          transparent
          opacity={under ? 0.15 : 0.72}
          depthWrite={false}
          side={DoubleSide}
          forceSinglePass
        />
      </mesh>
      <Ink points={grid.fine} color={palette.quiet} opacity={0.16} order={-8} />
      <Ink points={grid.firm} color={palette.quiet} opacity={0.34} order={-8} />
      <Ink
        points={border}
        color={mark === 'none' ? palette.quiet : palette.accent}
        opacity={mark === 'none' ? 0.5 : 1}
        width={mark === 'none' ? 1 : 2}
        order={-7}
      />
    </>
  )
}
