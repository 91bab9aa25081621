import { describe, expect, it } from 'vitest'
import { lidAt, type Room, roomSizes, skinOf, underside } from '../../../src/geometry/room'
import type { Solid } from '../../../src/handover/room/solid'
import { type United, unite } from '../../../src/handover/room/unite'
import { seeded, testGirder, testInput, testRoom } from './rooms'

/** Two lines that cross what the other needs, 1.4 m apart and at different heights, and one that stands by itself. */
const girders = [
  testGirder('G1', [0, 0, 18], [14, 1, 18.3]),
  testGirder('G2', [1, 1.4, 17.6], [15, 2.4, 17.6]),
  testGirder('G3', [0, 30, 18], [14, 30, 18]),
]
const rooms = girders.map((g) => testRoom(g, [2, 9], { corners: testInput(g, [2, 9]).corners.slice(0, 2) }))
const solids = rooms.map((room): Solid => {
  const { positions, indices } = skinOf(room)!
  return { name: room.line, positions, indices }
})

async function united(list: Solid[]): Promise<United> {
  const found = await unite(list, 'all')
  if (found === null || typeof found === 'string') throw new Error(String(found))
  return found
}

/** Volume and footprint of what lies in any room, by points thrown at random; with the standard error of both. */
function thrown(of: Room[], seed: number, count: number) {
  const random = seeded(seed)
  const [x0, x1, y0, y1, z0, z1] = [-3, 17, -5, 35, 8, 19]
  let [inside, under] = [0, 0]
  for (let i = 0; i < count; i++) {
    const [x, y, z] = [x0 + (x1 - x0) * random(), y0 + (y1 - y0) * random(), z0 + (z1 - z0) * random()]
    const found = of.flatMap((room): [number, number][] => {
      const lowest = underside(room, x, y)
      const lid = lidAt(room, x, y)
      return lowest && lowest.z < lid ? [[lowest.z, lid]] : []
    })
    if (found.length > 0) under++
    if (found.some(([low, high]) => z >= low && z <= high)) inside++
  }
  const area = (x1 - x0) * (y1 - y0)
  const error = (n: number, size: number): number => size * Math.sqrt(((n / count) * (1 - n / count)) / count)
  const box = area * (z1 - z0)
  return {
    volume: (box * inside) / count,
    footprint: (area * under) / count,
    volumeError: error(inside, box),
    footprintError: error(under, area),
  }
}

/** Undirected edges that are not run once each way. */
function openEdges({ positions, indices }: Solid): number {
  const count = positions.length / 3
  const runs = new Map<number, number>()
  for (let t = 0; t < indices.length; t += 3) {
    for (let k = 0; k < 3; k++) {
      const [a, b] = [indices[t + k]!, indices[t + ((k + 1) % 3)]!]
      runs.set(a * count + b, (runs.get(a * count + b) ?? 0) + 1)
    }
  }
  return [...runs].filter(
    ([key, times]) => times !== 1 || runs.get((key % count) * count + Math.floor(key / count)) !== 1,
  ).length
}

describe('the fall room of a whole plan', () => {
  it('is one closed, orientable surface round every line, of as many pieces as there are', async () => {
    const whole = await united(solids)
    expect(openEdges(whole)).toBe(0)
    expect(whole.pieces).toBe(2)
    // Euler and Poincare: corners less edges plus faces is twice the number of pieces without a hole through them.
    const faces = whole.indices.length / 3
    expect(new Set(whole.indices).size - faces * 1.5 + faces).toBe(2 * whole.pieces)
  })

  it('is no larger than its parts together and no smaller than each', async () => {
    const each = await Promise.all(solids.map((s) => united([s])))
    const whole = await united(solids)
    const overlapping = await united(solids.slice(0, 2))
    const sum = (list: United[]): number => list.reduce((v, s) => v + s.volume, 0)
    for (const one of each) expect(whole.volume).toBeGreaterThan(one.volume)
    expect(overlapping.volume).toBeLessThan(0.9 * sum(each.slice(0, 2)))
    expect(whole.volume / (overlapping.volume + each[2]!.volume)).toBeCloseTo(1, 5)
    for (const [i, one] of each.entries()) expect(one.volume / skinOf(rooms[i]!)!.volume).toBeCloseTo(1, 3)
  })

  it('has the volume and footprint that points thrown at random give, as surface and in the results', async () => {
    const seed = 20261125
    const { each, union } = roomSizes(rooms)
    const random = thrown(rooms, seed, 60000)
    expect(Math.abs(union.volume - random.volume), `seed ${seed}`).toBeLessThan(4 * random.volumeError)
    expect(Math.abs(union.footprint - random.footprint), `seed ${seed}`).toBeLessThan(
      4 * random.footprintError,
    )
    // Its surface stands within 20 mm of it, its grid has squares of 0.1 m: each a share of a per cent.
    const whole = await united(solids)
    expect(Math.abs(whole.volume / union.volume - 1)).toBeLessThan(0.01)
    for (const [i, room] of rooms.entries()) {
      const skin = skinOf(room)!
      expect(Math.abs(each[i]!.volume / skin.volume - 1)).toBeLessThan(0.01)
      expect(Math.abs(each[i]!.footprint / skin.footprint - 1)).toBeLessThan(0.01)
    }
    const lows = each.map((e) => e.lowest![2])
    expect(union.lowest![2]).toBe(Math.min(...lows))
  })

  it('there is none of no room', async () => {
    expect(await unite([], 'all')).toBeNull()
    expect(roomSizes([]).union).toEqual({ volume: 0, footprint: 0, lowest: null })
  })

  it('tells why open surfaces cannot be joined', async () => {
    const [first] = solids
    const open = { ...first!, indices: first!.indices.slice(0, 300) }
    expect(await unite([open], 'all')).toContain('no closed surface')
  })
})
