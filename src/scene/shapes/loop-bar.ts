/** One bent bar: two legs up from the concrete and a top with rounded corners, across the girder. */
import { BufferAttribute, BufferGeometry, Vector3 } from 'three'

export interface BarFineness {
  /** Sides of the bar's section. */
  sides: number
  /** Points in each bend. */
  bend: number
}

/** Clear width of a bent bar across the girder, m; the plan tells its height only, so its picture keeps one width. */
const LOOP_WIDTH = 0.13

/** Centreline of the bar from foot to foot in the plane across the girder, top at `height`. */
function centreline(height: number, bend: number): Vector3[] {
  const half = LOOP_WIDTH / 2
  const r = Math.min(0.04, half, height / 2)
  const points = [new Vector3(0, half, -0.01)]
  for (const side of [1, -1]) {
    for (let i = 0; i <= bend; i++) {
      const t = ((side > 0 ? i : bend - i) / bend) * (Math.PI / 2)
      const y = side * (half - r + r * Math.cos(t))
      points.push(new Vector3(0, y, height - r + r * Math.sin(t)))
    }
  }
  return [...points, new Vector3(0, -half, -0.01)]
}

/** A bar of one loop standing at the origin; rings of `sides` vertices joined to a tube. */
export function loopBar(height: number, diameter: number, { sides, bend }: BarFineness): BufferGeometry {
  const line = centreline(height - diameter / 2, bend)
  const along = new Vector3(1, 0, 0)
  const points: number[] = []
  const index: number[] = []
  line.forEach((p, i) => {
    const way = (line[i + 1] ?? p).clone().sub(line[i - 1] ?? p)
    const out = way.normalize().cross(along)
    for (let k = 0; k < sides; k++) {
      const a = (2 * Math.PI * k) / sides
      const q = p.clone().addScaledVector(along, (Math.cos(a) * diameter) / 2)
      points.push(...q.addScaledVector(out, (Math.sin(a) * diameter) / 2))
    }
    if (i > 0) joinRings(index, (i - 1) * sides, i * sides, sides)
  })
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(points), 3))
  geometry.setIndex(index)
  geometry.computeVertexNormals()
  return geometry
}

function joinRings(index: number[], a: number, b: number, sides: number): void {
  for (let k = 0; k < sides; k++) {
    const next = (k + 1) % sides
    index.push(a + k, a + next, b + k, b + k, a + next, b + next)
  }
}
