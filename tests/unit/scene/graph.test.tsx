// @vitest-environment happy-dom
import { readFileSync } from 'node:fs'
import { create } from '@react-three/test-renderer'
import { type InstancedMesh, type Object3D, Vector3 } from 'three'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { readPlan } from '../../../src/plan/read'
import type { Plan } from '../../../src/plan/types'
import { Boxes } from '../../../src/scene/parts/Boxes'
import { CrossFrames } from '../../../src/scene/parts/CrossFrames'
import { Girders } from '../../../src/scene/parts/Girders'
import { Lanes } from '../../../src/scene/parts/Lanes'
import { Levels } from '../../../src/scene/parts/Levels'
import { Ropes } from '../../../src/scene/parts/Ropes'
import { Stanchions } from '../../../src/scene/parts/Stanchions'
import { TieBacks } from '../../../src/scene/parts/TieBacks'
import { sceneState } from '../../../src/scene/scene-state'
import { select } from '../../../src/state/actions'
import { app } from '../../../src/state/store'
import { noStudy, type StudyState } from '../../../src/state/study-state'
import { study } from '../../../src/study/study'

let plan: Plan
let shown: Pick<StudyState, 'results' | 'details'>

beforeAll(() => {
  const read = readPlan(readFileSync('samples/four-girder-bay.plan.json', 'utf8'))
  if (!read.ok) throw new Error('the sample is a plan')
  plan = read.plan
  const { results, details } = study(plan, { withoutTime: true })
  shown = { results, details }
})

beforeEach(() => {
  app.setState({ plan, selection: [], hover: null, hidden: [], study: { ...noStudy, ...shown } })
})

let unmount: (() => Promise<void>) | null = null
afterEach(() => unmount?.())

async function sceneOf(element: React.ReactElement): Promise<Object3D> {
  const renderer = await create(element)
  unmount = () => renderer.unmount()
  return renderer.scene.instance
}

const Site = () => (
  <>
    <Levels />
    <Lanes />
    <Boxes />
    <CrossFrames />
    <Girders />
    <Stanchions />
    <TieBacks />
    <Ropes />
  </>
)

const named = (scene: Object3D, name: string): Object3D => {
  const found = scene.getObjectByName(name)
  if (!found) throw new Error(`no object "${name}"`)
  return found
}

describe('the scene of a plan', () => {
  it('has an object for everything in it, by the names that the window uses', async () => {
    const scene = await sceneOf(<Site />)
    const wanted = [
      ...plan.girders.map((g) => `girder:${g.id}`),
      ...plan.girders.flatMap((g) => g.loops.map((r) => `loop-row:${r.id}`)),
      ...plan.lines.map((l) => `rope:${l.id}`),
      ...plan.lines.flatMap((l) => l.stanchions.map((s) => `stanchion:${s.id}`)),
      ...plan.lines.flatMap((l) =>
        l.tieBacks.flatMap((t) => [`tie-back:${t.id}:strap`, `tie-back:${t.id}:tensioner`]),
      ),
      ...plan.obstacles.map((o) => `obstacle:${o.id}`),
    ]
    for (const name of wanted) expect(scene.getObjectByName(name), name).toBeDefined()
  })

  it('draws as many bars as there are loops, each at its station', async () => {
    sceneState.setState({ software: false })
    const scene = await sceneOf(<Girders />)
    const [girder] = plan.girders
    const [row] = girder!.loops
    const bars = named(scene, `loop-row:${row!.id}`) as InstancedMesh
    expect(bars.count).toBe(row!.count)
    const at = new Vector3().setFromMatrixPosition(
      (() => {
        const m = bars.matrixWorld.clone()
        bars.getMatrixAt(4, m)
        return m
      })(),
    )
    expect(at.x).toBeCloseTo(row!.first + 4 * row!.spacing, 6)
    expect(at.y).toBeCloseTo(row!.offset, 6)
  })

  it('draws the same bars and posts in as many objects where no graphics processor draws', async () => {
    const count = (scene: Object3D) => {
      let [corners, objects] = [0, 0]
      scene.traverseVisible((o) => {
        const { isMesh, geometry, count: copies = 1 } = o as InstancedMesh
        if (!isMesh) return
        corners += geometry.getAttribute('position').count * copies
        objects++
      })
      return { corners, objects }
    }
    const instanced = count(await sceneOf(<Stanchions />))
    await unmount?.()
    sceneState.setState({ software: true })
    const merged = await sceneOf(<Stanchions />)
    sceneState.setState({ software: false })
    expect(count(merged)).toEqual(instanced)
    expect(merged.getObjectsByProperty('isInstancedMesh', true)).toEqual([])
  })

  it('stands every grip over its foot, and moves it with the plan', async () => {
    const scene = await sceneOf(<Stanchions />)
    const line = plan.lines[0]!
    const stanchion = line.stanchions[1]!
    const girder = plan.girders.find((g) => g.id === line.girder)!
    const before = named(scene, `stanchion:${stanchion.id}`).position.clone()
    const moved = structuredClone(plan)
    moved.lines[0]!.stanchions[1]!.station += 0.6096
    const { act } = await import('react')
    await act(async () => app.setState({ plan: moved }))
    const after = named(scene, `stanchion:${stanchion.id}`).position
    expect(after.distanceTo(before)).toBeCloseTo(0.6096, 6)
    expect(before.z).toBeGreaterThan(Math.min(girder.start[2], girder.end[2]))
  })

  it('leaves out what is hidden', async () => {
    const id = plan.obstacles.find((o) => o.kind === 'box')!.id
    app.setState({ hidden: [id] })
    const scene = await sceneOf(<Boxes />)
    expect(scene.getObjectByName(`obstacle:${id}`)).toBeUndefined()
  })

  it('marks what is selected', async () => {
    const scene = await sceneOf(<Girders />)
    const girder = named(scene, `girder:${plan.girders[0]!.id}`)
    const widths = (): number[] => {
      const found: number[] = []
      girder.parent!.traverse((o) => {
        const { material } = o as { material?: { uniforms?: { width?: { value: number } } } }
        if (material?.uniforms?.width) found.push(material.uniforms.width.value)
      })
      return found
    }
    const plain = Math.max(...widths())
    const { act } = await import('react')
    await act(async () => select({ kind: 'girder', id: plan.girders[0]!.id }))
    expect(Math.max(...widths())).toBeGreaterThan(plain)
  })
})

describe('a large site', () => {
  it('is drawn in few calls: posts and loops are instanced', async () => {
    app.setState({ plan: largeSite(plan) })
    const scene = await sceneOf(<Site />)
    let drawn = 0
    scene.traverseVisible((o) => {
      if ((o as { isMesh?: boolean }).isMesh) drawn++
    })
    const { girders, lines, obstacles } = app.getState().plan
    expect(girders).toHaveLength(20)
    expect(lines).toHaveLength(12)
    // Solid, edges and loops of a girder; two for a box, four for a lane or a level; of a line four kinds of pieces, three
    // for its straps, two for its crew and two ropes, each line by itself so that one can move alone; a few for the rest.
    expect(drawn).toBeLessThanOrEqual(20 * 3 + obstacles.length * 4 + lines.length * 11 + 8)
  })
})

/** Twenty girders and twelve lines, by copying the first of the sample. */
function largeSite(from: Plan): Plan {
  const [girder] = from.girders
  const [line] = from.lines
  const girders = Array.from({ length: 20 }, (_, i) => ({
    ...structuredClone(girder!),
    id: `G${i}`,
    start: [girder!.start[0], girder!.start[1] + 2.5 * i, girder!.start[2]] as [number, number, number],
    end: [girder!.end[0], girder!.end[1] + 2.5 * i, girder!.end[2]] as [number, number, number],
    loops: girder!.loops.map((r) => ({ ...r, id: `R${i}-${r.id}` })),
  }))
  const lines = Array.from({ length: 12 }, (_, i) => ({
    ...structuredClone(line!),
    id: `L${i}`,
    girder: `G${i}`,
    stanchions: line!.stanchions.map((s) => ({ ...s, id: `L${i}-${s.id}` })),
    tieBacks: line!.tieBacks.map((t) => ({ ...t, id: `L${i}-${t.id}`, stanchion: `L${i}-${t.stanchion}` })),
  }))
  return { ...from, girders, lines }
}
