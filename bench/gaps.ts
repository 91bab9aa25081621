/**
 * Gaps: what one line's room costs against models of more and more triangles, and against a whole site of 20 girders, 12
 * lines, 60 obstacles and a model of a million triangles after one stanchion has moved.
 */
import {
  gapsOfLine,
  gapsOfPlan,
  type MeshTarget,
  meshTarget,
  modelIndex,
  type ReadModel,
  targetsOf,
} from '../src/geometry/gaps'
import { type Room, roomSizes, skinOf } from '../src/geometry/room'
import type { MeshObstacle, Obstacle, Plan } from '../src/plan/types'
import { testGirder, testRoom } from '../tests/unit/room/rooms'
import { size, type Timed, timed } from './harness'

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

const read = (n: number): ReadModel => ({ ok: true, value: { triangles: terrain(n) } })

/** About ten thousand, a hundred thousand and a million triangles. */
const SIZES = size([71, 224, 707], [71])

const posts = (spans: number): number[] => Array.from({ length: spans + 1 }, (_, i) => 2 + (36 * i) / spans)
const girder = testGirder('G', [0, 0, 18], [40, 0, 18])

/** The plain gap and the least distance in any direction, each of a room that was not measured before. */
function againstModels(): Timed[] {
  return SIZES.flatMap((n) => {
    const model = read(n)
    const start = performance.now()
    if (model.ok) modelIndex(model.value.triangles)
    const note = `index ${(performance.now() - start).toFixed(0)} ms`
    const target = meshTarget(mesh, model)
    if (!target.ok) throw new Error(target.why)
    const room = (): Room => ({ ...testRoom(girder, posts(4)) })
    const rooms = Array.from({ length: 4 }, room)
    let [i, k] = [0, 0]
    const name = `one line against ${2 * n * n} triangles`
    return [
      timed(`${name}, vertical`, () => [target.measure(rooms[i++]!).point?.gap ?? 0], 3, 1, note),
      timed(`${name}, any direction`, () => [target.nearest(rooms[k++]!, null)?.distance ?? 0], 1, 1),
    ]
  })
}

/** How the cost of one line grows with its spans: room, gaps to 60 boxes, surface. */
function bySpans(): Timed[] {
  const targets = targetsOf(
    { girders: [girder], obstacles: boxes(), lines: [] } as unknown as Plan,
    new Map(),
  )
  return size([2, 4, 8], [2]).map((spans) =>
    timed(
      `room of ${spans} spans and its gaps to 60 boxes`,
      () => gapsOfLine(testRoom(girder, posts(spans)), targets).map((m) => m?.point?.gap ?? 0),
      2,
      1,
    ),
  )
}

const boxes = (): Obstacle[] =>
  Array.from({ length: 60 }, (_, i): Obstacle => {
    const center: [number, number, number] = [(i * 7) % 40, (i * 11) % 60, 8 + (i % 5)]
    return { id: `O${i}`, name: 'b', kind: 'box', center, size: [2, 2, 3], turn: i * 13 }
  })

const LINES = size(12, 2)

/** 20 girders, 12 lines, 59 boxes and the model of a million triangles. */
function wholeSite(): Timed[] {
  const girders = Array.from({ length: 20 }, (_, i) => testGirder(`G${i}`, [0, 3 * i, 18], [40, 3 * i, 18]))
  const rooms = girders.slice(0, LINES).map((g) => testRoom(g, [2, 11, 20, 29, 38]))
  const obstacles: Obstacle[] = [...boxes().slice(0, 59), mesh]
  const plan = { girders, obstacles, lines: [], decks: [] } as unknown as Plan
  const placed = new Map<string, MeshTarget>([['M', meshTarget(mesh, read(SIZES.at(-1)!))]])
  const sum = (gaps: { gap: number | null }[]): number[] => gaps.map((g) => g.gap ?? 0)
  let station = 20
  const moved = (): Room[] => {
    station += 0.05
    return rooms.map((room, i) => (i === 1 ? testRoom(girders[1]!, [2, 11, station, 29, 38]) : room))
  }
  return [
    timed(
      `${LINES} lines, 20 girders, 60 obstacles: all gaps for the first time`,
      () => sum(gapsOfPlan(plan, rooms, placed)),
      1,
      0,
    ),
    timed(
      'the same after one stanchion moved: its room and all gaps',
      () => sum(gapsOfPlan(plan, moved(), placed)),
      5,
      1,
    ),
    timed(
      'the same with least distances in any direction, at rest',
      () => sum(gapsOfPlan(plan, rooms, placed, true)),
      1,
      0,
    ),
  ]
}

export function bench(): Timed[] {
  return [
    ...againstModels(),
    ...bySpans(),
    ...wholeSite(),
    ...size([2, 4], []).flatMap((spans) => {
      const own = testRoom(girder, posts(spans))
      return [
        timed(
          `surface of ${spans} spans for the picture (60 mm)`,
          () => [skinOf(own, 0.06)?.volume ?? 0],
          2,
          1,
        ),
        timed(`surface of ${spans} spans for a file (20 mm)`, () => [skinOf(own)?.volume ?? 0], 1, 0),
      ]
    }),
    timed(
      'volume and footprint of a room of 4 spans',
      () => [roomSizes([testRoom(girder, posts(4))]).union.volume],
      2,
      1,
    ),
  ]
}
