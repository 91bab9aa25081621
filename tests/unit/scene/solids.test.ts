import {
  BoxGeometry,
  DoubleSide,
  Group,
  Mesh,
  MeshBasicMaterial,
  type Object3D,
  Raycaster,
  Vector3,
} from 'three'
import { describe, expect, it } from 'vitest'
import type { BoxObstacle, Plan, Vec3 } from '../../../src/plan/types'
import { SHORT, solidsOf } from '../../../src/scene/camera/solids'
import { girderMatrix } from '../../../src/scene/place'
import { girderSolid } from '../../../src/scene/shapes/section'
import { sample } from '../plan-support'
import { seeded } from '../room/rooms'

const SEED = 20261126

const inTheWay = (plan: Plan, without: string[] = []) =>
  solidsOf({ plan, without, places: new Map(), model: () => null })

/** Girders and boxes as the scene draws them, for three's own rays. */
function drawn({ girders, obstacles }: Plan): Group {
  const group = new Group()
  const material = new MeshBasicMaterial({ side: DoubleSide })
  for (const girder of girders) {
    const { start, end, section } = girder
    const length = Math.hypot(end[0] - start[0], end[1] - start[1], end[2] - start[2])
    const mesh = new Mesh(girderSolid(section, length), material)
    mesh.matrixAutoUpdate = false
    mesh.matrix.copy(girderMatrix(girder))
    group.add(mesh)
  }
  for (const box of obstacles) {
    if (box.kind !== 'box') continue
    const mesh = new Mesh(new BoxGeometry(...box.size), material)
    mesh.position.set(...box.center)
    mesh.rotation.z = ((box.turn ?? 0) * Math.PI) / 180
    group.add(mesh)
  }
  group.updateMatrixWorld(true)
  return group
}

function struck(scene: Object3D, eye: Vec3, place: Vec3): boolean {
  const way = new Vector3(...place).sub(new Vector3(...eye))
  const far = way.length() - SHORT
  return new Raycaster(new Vector3(...eye), way.normalize(), 0, far).intersectObject(scene).length > 0
}

describe('what stands in the way', () => {
  it(`is what three's own rays strike, of girders and boxes (seed ${SEED})`, () => {
    const plan = sample('four-girder-bay')
    const box: BoxObstacle = {
      id: 'B',
      name: 'b',
      kind: 'box',
      center: [10, 5, 4],
      size: [3, 2, 5],
      turn: 30,
    }
    plan.obstacles = [box]
    plan.decks = []
    const [hides, scene] = [inTheWay(plan), drawn(plan)]
    const next = seeded(SEED)
    const between = (from: number, to: number): number => from + (to - from) * next()
    const g = plan.girders[1]!
    let hidden = 0
    for (let i = 0; i < 400; i++) {
      const eye: Vec3 = [between(-30, 60), between(-30, 40), between(-5, 40)]
      const place: Vec3 = [
        between(g.start[0], g.end[0]),
        between(-10, 20),
        between(g.start[2] - 4, g.start[2] + 1),
      ]
      const told = hides(eye, place)
      expect(told, `from ${eye} to ${place}`).toBe(struck(scene, eye, place))
      if (told) hidden++
    }
    expect(hidden).toBeGreaterThan(30)
    expect(hidden).toBeLessThan(370)
  })

  it('is a level seen from under it, a deck within its outline, a model of few triangles', () => {
    const plan: Plan = { ...sample(), girders: [], obstacles: [], decks: [] }
    const level: Plan = { ...plan, obstacles: [{ id: 'W', name: 'w', kind: 'water', elevation: 0 }] }
    expect(inTheWay(level)([0, 0, -3], [0, 0, 5])).toBe(true)
    expect(inTheWay(level)([0, 9, 3], [0, 0, 5])).toBe(false)
    const outline: [number, number][] = [
      [0, 0],
      [4, 0],
      [4, 4],
      [0, 4],
    ]
    const deck: Plan = { ...plan, decks: [{ id: 'D', name: 'd', outline, elevation: 2 }] }
    expect(inTheWay(deck)([2, 2, 6], [2, 2, 0])).toBe(true)
    expect(inTheWay(deck)([7, 7, 6], [7, 7, 0])).toBe(false)
    expect(inTheWay(deck, ['D'])([2, 2, 6], [2, 2, 0])).toBe(false)
    const soup = new Float32Array([0, 0, 0, 4, 0, 0, 0, 4, 0])
    const model: Plan = {
      ...plan,
      obstacles: [{ id: 'M', name: 'm', kind: 'mesh', file: 'm', at: [1, 1, 3] }],
    }
    const hides = solidsOf({ plan: model, without: [], places: new Map(), model: () => soup })
    expect(hides([2, 2, 6], [2, 2, 0])).toBe(true)
    expect(hides([4.5, 4.5, 6], [4.5, 4.5, 0])).toBe(false)
  })
})
