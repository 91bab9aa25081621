/** A plain figure to scale, feet at the origin, facing +x: helmet, body, arms and legs as one geometry. */
import {
  type BufferGeometry,
  CapsuleGeometry,
  Euler,
  Matrix4,
  Quaternion,
  SphereGeometry,
  Vector3,
} from 'three'
import { mergeGeometries } from 'three/examples/jsm/utils/BufferGeometryUtils.js'

/** The dorsal D-ring lies at about this part of a person's stature. */
export const D_RING_PART = 0.8

export type Pose = 'standing' | 'hanging'

interface Limb {
  from: [number, number, number]
  to: [number, number, number]
  thick: number
}

/** Limbs of a figure one unit tall. */
function limbs(pose: Pose): Limb[] {
  const hang = pose === 'hanging'
  const hand = hang ? 0.14 : 0.04
  const foot = hang ? 0.05 : 0
  return [-1, 1].flatMap((side): Limb[] => [
    { from: [0, side * 0.05, 0.47], to: [hang ? 0.06 : 0.01, side * 0.06, 0.26], thick: 0.041 },
    {
      from: [hang ? 0.06 : 0.01, side * 0.06, 0.26],
      to: [foot - (hang ? 0.06 : 0), side * 0.065, 0.03],
      thick: 0.033,
    },
    {
      from: [foot - (hang ? 0.06 : 0), side * 0.065, 0.022],
      to: [foot + 0.055, side * 0.07, 0.02],
      thick: 0.021,
    },
    { from: [0, side * 0.1, 0.79], to: [0.02, side * (hang ? 0.17 : 0.13), 0.62], thick: 0.027 },
    {
      from: [0.02, side * (hang ? 0.17 : 0.13), 0.62],
      to: [hand, side * (hang ? 0.15 : 0.12), 0.47],
      thick: 0.022,
    },
  ])
}

function limb({ from, to, thick }: Limb): BufferGeometry {
  const [a, b] = [new Vector3(...from), new Vector3(...to)]
  const way = b.clone().sub(a)
  const turn = new Quaternion().setFromUnitVectors(new Vector3(0, 1, 0), way.clone().normalize())
  const place = new Matrix4().compose(a.add(b).multiplyScalar(0.5), turn, new Vector3(1, 1, 1))
  return new CapsuleGeometry(thick, way.length(), 2, 7, 1).applyMatrix4(place)
}

function torso(): BufferGeometry {
  const upright = new Matrix4().makeRotationFromEuler(new Euler(Math.PI / 2, 0, 0))
  const flat = new Matrix4().makeScale(0.62, 1, 1)
  const place = new Matrix4().makeTranslation(0, 0, 0.645)
  return new CapsuleGeometry(0.105, 0.2, 3, 10, 1).applyMatrix4(place.multiply(flat).multiply(upright))
}

/** Head and a helmet with a small peak. */
function head(): BufferGeometry[] {
  const helmet = new SphereGeometry(0.068, 10, 5, 0, Math.PI * 2, 0, Math.PI / 2)
  const brim = new SphereGeometry(0.078, 10, 4).applyMatrix4(new Matrix4().makeScale(1.1, 1, 0.12))
  helmet.applyMatrix4(new Matrix4().makeRotationX(Math.PI / 2))
  return [
    new SphereGeometry(0.058, 10, 8).translate(0.005, 0, 0.915),
    helmet.translate(0, 0, 0.932),
    brim.translate(0.014, 0, 0.934),
  ]
}

/** One unit tall; scale by the stature. */
export function figure(pose: Pose): BufferGeometry {
  const parts = [torso(), ...head(), ...limbs(pose).map(limb)].map((g) => {
    g.deleteAttribute('uv')
    return g
  })
  return mergeGeometries(parts)
}
