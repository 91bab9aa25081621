/** Gaps: what one line's room costs against models of more and more triangles, and the whole plan's plain obstacles. */
import { gapsOfLine, gapsOfPlan, meshTarget, modelIndex, targetsOf } from '../src/geometry/gaps'
import { type Room, skinOf } from '../src/geometry/room'
import type { MeshObstacle, Obstacle, Plan } from '../src/plan/types'
import { testGirder, testRoom } from '../tests/unit/room/rooms'
import { type Timed, timed } from './harness'

/** A hilly ground of 2 x n x n triangles, 120 m square, under the lines. */
function terrain(n: number): Float32Array {
  const out = new Float32Array(n * n * 18)
  const at = (i: number, k: number): [number, number, number] => {
    const [x, y] = [(120 * i) / n - 40, (120 * k) / n - 60]
    return [x, y, 6 + 1.5 * Math.sin(x * 0.7) * Math.cos(y * 0.5) + 0.1 * Math.sin(9 * x + 5 * y)]
  }
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < n; k++) {
      const [a, b, c, d] = [at(i, k), at(i + 1, k), at(i + 1, k + 1), at(i, k + 1)]
      out.set([...a, ...b, ...c, ...a, ...c, ...d], (i * n + k) * 18)
    }
  }
  return out
}

const mesh: MeshObstacle = { id: 'M', name: 'ground', kind: 'mesh', file: 'ground.glb' }

function againstModels(room: Room): Timed[] {
  return [50, 158, 500, 707].flatMap((n) => {
    const triangles = terrain(n)
    const start = performance.now()
    modelIndex(triangles)
    const built = performance.now() - start
    const target = meshTarget(mesh, { ok: true, value: { triangles } })
    if (!target.ok) throw new Error(target.why)
    const name = `one line against ${2 * n * n} triangles`
    const note = `index ${built.toFixed(0)} ms`
    return timed(name, () => [target.measure(room).point?.gap ?? 0], 3, 1, note)
  })
}

/** 20 girders, 12 lines, 60 obstacles. */
function wholePlan(): Timed[] {
  const girders = Array.from({ length: 20 }, (_, i) => testGirder(`G${i}`, [0, 3 * i, 18], [40, 3 * i, 18]))
  const rooms = girders.slice(0, 12).map((g) => testRoom(g, [2, 11, 20, 29, 38]))
  const obstacles = Array.from({ length: 60 }, (_, i): Obstacle => {
    const center: [number, number, number] = [(i * 7) % 40, (i * 11) % 60, 8 + (i % 5)]
    return { id: `O${i}`, name: 'b', kind: 'box', center, size: [2, 2, 3], turn: i * 13 }
  })
  const plan = { girders, obstacles, lines: [], decks: [] } as unknown as Plan
  const targets = targetsOf(plan, new Map())
  const sum = (gaps: { gap: number | null }[]): number[] => gaps.map((g) => g.gap ?? 0)
  return [
    timed('12 lines against 60 boxes and 20 girders', () => sum(gapsOfPlan(plan, rooms)), 1, 1),
    timed(
      'one of these lines alone, as in a drag',
      () => {
        const gaps = gapsOfLine(rooms[5]!, targets)
        return gaps.map((m) => m?.point?.gap ?? 0)
      },
      5,
      1,
    ),
  ]
}

export function bench(): Timed[] {
  const girder = testGirder('G', [0, 0, 18], [40, 0, 18])
  const room = testRoom(girder, [2, 11, 20, 29, 38])
  const posts = (spans: number): number[] => Array.from({ length: spans + 1 }, (_, i) => 2 + (36 * i) / spans)
  return [
    ...againstModels(room),
    ...wholePlan(),
    ...[1, 2, 4].map((spans) => {
      const own = testRoom(girder, posts(spans))
      return timed(`skin of ${spans} spans at 60 mm`, () => [skinOf(own, 0.06)?.volume ?? 0], 1, 1)
    }),
  ]
}
