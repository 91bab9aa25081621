/** Rooms for tests: seeded numbers, lines and scenes of the size that real ones have. */
import { girderFrame } from '../../../src/geometry/girder'
import { buildRoom } from '../../../src/geometry/room/build'
import { topOutline } from '../../../src/geometry/room/surface'
import type { RoomInput, RoomSample } from '../../../src/geometry/room/types'
import type { Girder } from '../../../src/plan/types'

/** Numbers in [0, 1) from a seed (Park and Miller 1988). */
export function seeded(seed: number): () => number {
  let state = (seed % 2147483646) + 1
  return () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
}

export function testGirder(
  id: string,
  start: [number, number, number],
  end: [number, number, number],
): Girder {
  return {
    id,
    name: id,
    start,
    end,
    material: 'concrete',
    section: {
      topWidth: 1.07,
      topThickness: 0.13,
      webThickness: 0.18,
      bottomWidth: 0.66,
      bottomThickness: 0.2,
      depth: 1.83,
    },
    loops: [],
  }
}

/** Drop of a made-up span: none at the stanchions, `sag` at the middle, steep at the ends as real ones are. */
function madeDrop(station: number, posts: number[], sag: number): number {
  for (let i = 1; i < posts.length; i++) {
    const [a, b] = [posts[i - 1]!, posts[i]!]
    if (station <= b) return sag * (1 - Math.abs((2 * (station - a)) / (b - a) - 1) ** 2.4)
  }
  return 0
}

/** A line with two workers (a lanyard and a retractable) and four corners each. */
export function testInput(girder: Girder, posts: number[], change: Partial<RoomInput> = {}): RoomInput {
  const workers: RoomInput['workers'] = [
    { id: 'W1', type: 'lanyard', length: 1.2, harnessStretch: 0.3, dRingHeight: 1.45 },
    { id: 'W2', type: 'retractable', length: 0.6, harnessStretch: 0.25, dRingHeight: 1.5 },
  ]
  const corners = workers.flatMap(({ id: worker }) =>
    (['soft', 'stiff'] as const).flatMap((line) =>
      (['low', 'high'] as const).map((connector) => ({ worker, line, connector })),
    ),
  )
  const [first, last] = [posts[0]!, posts[posts.length - 1]!]
  const stations = [...Array.from({ length: 61 }, (_, i) => first + ((last - first) * i) / 60), ...posts]
  const sample = (station: number, c: (typeof corners)[number]): RoomSample => ({
    drop: madeDrop(station, posts, c.line === 'soft' ? 0.7 : 0.4),
    extension: c.connector === 'low' ? 0.95 : 0.4,
    height: 1.067 - (c.line === 'soft' ? 0.03 : 0.02),
  })
  return {
    line: `L-${girder.id}`,
    girder: girder.id,
    frame: girderFrame(girder),
    stanchions: posts.map((station) => ({ station, offset: 0.2 })),
    workers,
    corners,
    stations: [...new Set(stations)]
      .sort((a, b) => a - b)
      .map((station) => ({ station, samples: corners.map((c) => sample(station, c)) })),
    excess: [],
    marginBelow: 0.61,
    side: 0.6,
    surface: [{ outline: topOutline(girder) }],
    ...change,
  }
}

export const testRoom = (girder: Girder, posts: number[], change: Partial<RoomInput> = {}) =>
  buildRoom(testInput(girder, posts, change))
