/** What lies under a point: models by their index against every triangle in turn, solids against hand-made places. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type Top, topsUnder } from '../../../src/geometry/gaps'
import { modelIndex } from '../../../src/geometry/gaps/mesh'
import { readPlan } from '../../../src/plan/read'
import type { MeshObstacle, Obstacle, Plan } from '../../../src/plan/types'
import { expectClose } from '../../support/close'
import { seeded } from '../../support/random'

const read = readPlan(readFileSync('samples/four-girder-bay.plan.json', 'utf8'))
if (!read.ok) throw new Error(read.faults[0]?.message)
const bay = read.plan

const withOnly = (...obstacles: Obstacle[]): Plan => ({ ...bay, obstacles })

function topOf(plan: Plan, id: string, models = new Map()): Top {
  const found = topsUnder(plan, plan.girders[0]!, models).tops.find((t) => t.id === id)
  if (!found) throw new Error(`${id} was not looked at`)
  return found
}

/** Height of a triangle at (x, y) by its three edge functions, every triangle in turn. */
function bruteTop(t: Float64Array, x: number, y: number, below: number): number | null {
  let best: number | null = null
  for (let i = 0; i < t.length; i += 9) {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = t.subarray(i, i + 9) as unknown as number[]
    const area = (bx! - ax!) * (cy! - ay!) - (by! - ay!) * (cx! - ax!)
    const u = ((bx! - x) * (cy! - y) - (by! - y) * (cx! - x)) / area
    const v = ((cx! - x) * (ay! - y) - (cy! - y) * (ax! - x)) / area
    const z = u * az! + v * bz! + (1 - u - v) * cz!
    if (u >= 0 && v >= 0 && u + v <= 1 && z < below && (best === null || z > best)) best = z
  }
  return best
}

describe('the top of a model under a point', () => {
  it('is the highest of all its triangles below the walking surface, wherever the model stands', () => {
    const seed = 20261125
    console.log(`seed ${seed}`)
    const { between } = seeded(seed)
    const soup = Float32Array.from({ length: 400 * 9 }, () => between(-4, 4))
    const mesh: MeshObstacle = {
      id: 'm',
      name: 'heap',
      kind: 'mesh',
      file: 'heap.stl',
      at: [12, 3, -5],
      turn: 35,
      scale: 1.5,
    }
    const top = topOf(withOnly(mesh), 'm', new Map([['heap.stl', { ok: true, value: { triangles: soup } }]]))
    const c = Math.cos((35 * Math.PI) / 180)
    const s = Math.sin((35 * Math.PI) / 180)
    const placed = Float64Array.from(soup)
    for (let i = 0; i < placed.length; i += 3) {
      const [x, y, z] = [soup[i]!, soup[i + 1]!, soup[i + 2]!]
      placed[i] = 12 + 1.5 * (c * x - s * y)
      placed[i + 1] = 3 + 1.5 * (s * x + c * y)
      placed[i + 2] = -5 + 1.5 * z
    }
    let met = 0
    for (let i = 0; i < 300; i++) {
      const [x, y, below] = [between(4, 20), between(-5, 11), between(-9, 0)]
      const wanted = bruteTop(placed, x, y, below)
      const got = top.topAt(x, y, below)
      if (wanted === null) expect(got).toBeNull()
      else {
        met++
        expectClose(got!, wanted, { abs: 1e-5 })
      }
    }
    expect(met).toBeGreaterThan(100)
  })

  it('is not known where the file was not read: the model is named instead', () => {
    const mesh: MeshObstacle = { id: 'm', name: 'heap', kind: 'mesh', file: 'heap.stl' }
    const { tops, unlooked } = topsUnder(withOnly(mesh), bay.girders[0]!, new Map())
    expect(tops.map((t) => t.id)).not.toContain('m')
    expect(unlooked).toEqual(['heap'])
  })
})

describe('the top of plain things', () => {
  it('a box that travels is met anywhere on its way, at its height there', () => {
    const travel: Obstacle = {
      id: 'b',
      name: 'hoist',
      kind: 'box',
      center: [0, 0, -4],
      size: [1, 1, 2],
      travel: [[10, 0, -2]],
    }
    const { topAt } = topOf(withOnly(travel), 'b')
    // It climbs: over a place it is highest when its rear edge leaves it, with the centre 0.5 further on.
    expectClose(topAt(0, 0, 0)!, -3 + (0.5 / 10) * 2, { abs: 1e-9 })
    expectClose(topAt(5, 0.2, 0)!, -3 + (5.5 / 10) * 2, { abs: 1e-9 })
    expect(topAt(5, 0.7, 0)).toBeNull()
    expect(topAt(-2, 0, 0)).toBeNull()
  })

  it('nothing under the walking surface itself counts of girders and bracing; a neighbour beyond it does', () => {
    const alone: Plan = { ...bay, obstacles: [], decks: [] }
    const [own, next] = alone.girders
    const middle = (g: typeof own): [number, number] => [
      (g!.start[0] + g!.end[0]) / 2,
      (g!.start[1] + g!.end[1]) / 2,
    ]
    const { tops } = topsUnder(alone, own!, new Map())
    const z = Math.max(own!.start[2], own!.end[2]) + 1
    expect(tops.find((t) => t.id === own!.id)!.topAt(...middle(own), z)).toBeNull()
    expectClose(
      tops.find((t) => t.id === next!.id)!.topAt(...middle(next), z)!,
      (next!.start[2] + next!.end[2]) / 2,
      {
        abs: 1e-9,
      },
    )
  })
})

describe('the top of what else lies there', () => {
  it('ground and water lie everywhere under what stands over them, and not over it', () => {
    const ground: Obstacle = { id: 'g', name: 'bank', kind: 'ground', elevation: -7 }
    const water: Obstacle = { id: 'w', name: 'river', kind: 'water', elevation: -9 }
    const plan = withOnly(ground, water)
    for (const [id, at] of [
      ['g', -7],
      ['w', -9],
    ] as const) {
      const { topAt } = topOf(plan, id)
      expect([topAt(0, 0, 0), topAt(1e3, -1e3, at + 0.01), topAt(0, 0, at), topAt(0, 0, -20)]).toEqual([
        at,
        at,
        null,
        null,
      ])
    }
    const { tops, unlooked } = topsUnder(plan, plan.girders[0]!, new Map())
    expect(unlooked).toEqual([])
    expect(tops[0]).toMatchObject({ id: 'g', name: 'bank', kind: 'ground' })
    expect(tops.map((t) => t.kind)).toEqual(['ground', 'water', ...plan.girders.map(() => 'girder')])
  })

  it('a lane is as high as what drives on it', () => {
    const lane: Obstacle = {
      id: 'l',
      name: 'road',
      kind: 'lane',
      path: [
        [0, 0, -8],
        [20, 0, -6],
      ],
      width: 3,
      clearHeight: 4,
    }
    const { topAt } = topOf(withOnly(lane), 'l')
    expectClose(topAt(10, 1.4, 0)!, -7 + 4, { abs: 1e-9 })
    expect([topAt(10, 1.6, 0), topAt(10, 0, -3.5)]).toEqual([null, null])
  })

  it('a cross-frame between girders that are there is met by its bars; one without is named', () => {
    const frame = bay.obstacles.find((o) => o.kind === 'cross-frame')!
    if (frame.kind !== 'cross-frame') throw new Error('no cross-frame')
    const whole = topsUnder(withOnly(frame), bay.girders[0]!, new Map())
    expect([whole.tops[0]!.id, whole.unlooked]).toEqual([frame.id, []])
    const lost: Obstacle = { ...frame, between: [frame.between[0], 'nowhere'] }
    const { tops, unlooked } = topsUnder(withOnly(lost), bay.girders[0]!, new Map())
    expect([tops.some((t) => t.id === frame.id), unlooked]).toEqual([false, [frame.name]])
  })

  it('a model that is not the one that was placed is named', () => {
    const mesh: MeshObstacle = { id: 'm', name: 'heap', kind: 'mesh', file: 'heap.stl', fileHash: 'a' }
    const triangles = new Float32Array(9)
    const other = new Map([['heap.stl', { ok: true as const, value: { triangles, hash: 'b' } }]])
    expect(topsUnder(withOnly(mesh), bay.girders[0]!, other).unlooked).toEqual(['heap'])
  })
})

it('looks at few of the triangles of a large model: those about the place, from the top down', () => {
  // A floor of 40 by 40 squares on each of five storeys; the place lies within one square.
  const floors: number[] = []
  for (let storey = 0; storey < 5; storey++)
    for (let i = 0; i < 40; i++)
      for (let k = 0; k < 40; k++) {
        const [x, y, z] = [i - 20, k - 20, -3 * storey]
        floors.push(x, y, z, x + 1, y, z, x, y + 1, z, x + 1, y, z, x + 1, y + 1, z, x, y + 1, z)
      }
  const triangles = Float32Array.from(floors)
  const mesh: MeshObstacle = { id: 'm', name: 'tower', kind: 'mesh', file: 'tower.stl' }
  const index = modelIndex(triangles, mesh.upAxis)
  const { search } = index
  let looked = 0
  index.search = (bound, best, visit) =>
    search(bound, best, (corners) => {
      looked++
      visit(corners)
    })
  const { topAt } = topOf(withOnly(mesh), 'm', new Map([['tower.stl', { ok: true, value: { triangles } }]]))
  for (const [x, y] of [
    [0.3, 0.4],
    [-19.7, 19.6],
    [19.6, -19.7],
  ] as const) {
    for (const [below, top] of [
      [1, 0],
      [-0.5, -3],
      [-11.5, -12],
    ] as const) {
      looked = 0
      expect(topAt(x, y, below)).toBe(top)
      expect(looked, `${x}, ${y} under ${below}`).toBeLessThan(40)
    }
  }
  for (const [x, y, below] of [
    [25, 0, 9],
    [-25, 0, 9],
    [0, 25, 9],
    [0, -25, 9],
    [0.3, 0.4, -13],
  ] as const) {
    looked = 0
    expect(topAt(x, y, below)).toBeNull()
    expect(looked, `${x}, ${y} under ${below}`).toBe(0)
  }
})
