/**
 * What stands in the way of the eye: girders, boxes, bracing, decks, levels and models, as the scene draws them. What is
 * only seen through (rooms, the clear height over lanes) and what is thin (posts, ropes, loops) is not in the way.
 */
import { type Matrix4, Ray, Vector3 } from 'three'
import { crossFrameBars } from '../../geometry/gaps/girder-solid'
import { contains } from '../../geometry/polygon'
import type { Obstacle, Plan, Vec3 } from '../../plan/types'
import { meshMatrix } from '../place'
import { barCube, boxCube, girderCubes } from '../shapes/clash-boxes'

/** Whether something solid lies between the eye and a place. */
export type Hides = (eye: Vec3, place: Vec3) => boolean

/** What is looked at may lie on a surface: sight need not reach nearer than this, m. */
export const SHORT = 0.1
/** Models of more triangles are looked through: one glance at a million would stop the window. */
const MOST_TRIANGLES = 20_000

export interface InTheWay {
  plan: Plan
  /** Ids of what does not hide what is looked at: itself, and what is not shown. */
  without: readonly string[]
  /** Where travelling boxes stand; others stand at their centres. */
  places: ReadonlyMap<string, Vec3>
  /** Triangles of a model as read, in its own units and axes. */
  model: (file: string) => Float32Array | null
}

export function solidsOf(all: InTheWay): Hides {
  const { plan, without } = all
  const there = (o: { id: string }): boolean => !without.includes(o.id)
  const solids: Hides[] = [
    ...plan.girders.filter(there).flatMap(girderCubes).map(cubeHides),
    ...(plan.decks ?? []).filter(there).map(({ outline, elevation }) => sheetHides(elevation, outline)),
    ...plan.obstacles.filter(there).flatMap((o) => obstacleHides(o, all)),
  ]
  return (eye, place) => {
    const to = shortOf(eye, place)
    return solids.some((hides) => hides(eye, to))
  }
}

function shortOf(eye: Vec3, place: Vec3): Vec3 {
  const way = new Vector3(...place).sub(new Vector3(...eye))
  const length = way.length()
  return way
    .multiplyScalar(Math.max(0, 1 - SHORT / length))
    .add(new Vector3(...eye))
    .toArray()
}

function obstacleHides(o: Obstacle, { plan, places, model }: InTheWay): Hides[] {
  switch (o.kind) {
    case 'box':
      return [cubeHides(boxCube(o, places.get(o.id) ?? o.center, 0))]
    case 'cross-frame':
      return (crossFrameBars(plan, o) ?? []).flatMap((bar) => barCube(bar, 0)).map(cubeHides)
    case 'ground':
    case 'water':
      return [sheetHides(o.elevation)]
    case 'mesh': {
      const triangles = model(o.file)
      return triangles && triangles.length / 9 <= MOST_TRIANGLES
        ? [trianglesHide(triangles, meshMatrix(o))]
        : []
    }
    case 'lane':
      return []
  }
}

/** A unit cube about the origin, put in its place: the way from eye to place cut with its three pairs of sides. */
function cubeHides(cube: Matrix4): Hides {
  const into = cube.clone().invert()
  return (eye, place) => {
    const a = new Vector3(...eye).applyMatrix4(into)
    const way = new Vector3(...place).applyMatrix4(into).sub(a)
    let [enters, leaves] = [0, 1]
    for (const k of ['x', 'y', 'z'] as const) {
      if (way[k] === 0) {
        if (Math.abs(a[k]) > 0.5) return false
        continue
      }
      const [s, t] = [(-0.5 - a[k]) / way[k], (0.5 - a[k]) / way[k]]
      enters = Math.max(enters, Math.min(s, t))
      leaves = Math.min(leaves, Math.max(s, t))
    }
    return enters < leaves
  }
}

/** A level sheet, of an outline or without end. */
function sheetHides(elevation: number, outline?: readonly (readonly [number, number])[]): Hides {
  return (eye, place) => {
    if (eye[2] > elevation === place[2] > elevation) return false
    const t = (elevation - eye[2]) / (place[2] - eye[2])
    const at = [0, 1].map((k) => eye[k]! + t * (place[k]! - eye[k]!)) as [number, number]
    return !outline || contains(outline as [number, number][], at)
  }
}

/** Looked at in the model's own axes. */
function trianglesHide(triangles: Float32Array, matrix: Matrix4): Hides {
  const into = matrix.clone().invert()
  const corners = Array.from({ length: triangles.length / 3 }, (_, i) =>
    new Vector3().fromArray(triangles, 3 * i),
  )
  const [ray, end, at] = [new Ray(), new Vector3(), new Vector3()]
  return (eye, place) => {
    ray.origin.set(...eye).applyMatrix4(into)
    end.set(...place).applyMatrix4(into)
    const far = ray.origin.distanceTo(end)
    ray.lookAt(end)
    for (let i = 0; i + 2 < corners.length; i += 3) {
      const cut = ray.intersectTriangle(corners[i]!, corners[i + 1]!, corners[i + 2]!, false, at)
      if (cut && ray.origin.distanceTo(cut) < far) return true
    }
    return false
  }
}
