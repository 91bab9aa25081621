import { Vector3 } from 'three'
import { describe, expect, it } from 'vitest'
import type { GirderSection, Plan, Vec3 } from '../../../src/plan/types'
import { barsGeometry } from '../../../src/scene/shapes/bars'
import { clashBoxes } from '../../../src/scene/shapes/clash-boxes'
import { D_RING_PART, figure } from '../../../src/scene/shapes/figure'
import { deepest } from '../../../src/scene/shapes/floor'
import { latticeLines, wholeSteps } from '../../../src/scene/shapes/lattice'
import { loopBar } from '../../../src/scene/shapes/loop-bar'
import { girderEdges, girderSolid } from '../../../src/scene/shapes/section'
import { facets } from '../../../src/scene/shapes/solid'
import { levelStrip, stripBody } from '../../../src/scene/shapes/strip'
import { volumeOf } from './volume'

const section: GirderSection = {
  topWidth: 1.07,
  topThickness: 0.13,
  webThickness: 0.18,
  bottomWidth: 0.66,
  bottomThickness: 0.2,
  depth: 1.83,
}

describe('a girder as a solid', () => {
  it('holds the volume of its section times its length, so it is closed and faces outwards', () => {
    const area = 1.07 * 0.13 + 0.18 * (1.83 - 0.13 - 0.2) + 0.66 * 0.2
    expect(volumeOf(girderSolid(section, 22.6))).toBeCloseTo(area * 22.6, 4)
  })

  it('inks twelve arrises and the outline of both ends', () => {
    expect(girderEdges(section, 10)).toHaveLength(12 * 3 * 6)
  })

  it('is a plain box where the flanges are no wider than the web', () => {
    const box = { ...section, topWidth: 0.4, webThickness: 0.4, bottomWidth: 0.4 }
    expect(volumeOf(girderSolid(box, 2))).toBeCloseTo(0.4 * 1.83 * 2, 5)
  })
})

describe('a loop', () => {
  it.each([
    { sides: 6, bend: 4 },
    { sides: 3, bend: 1 },
  ])('projects by its height with $sides sides', (fine) => {
    const bar = loopBar(0.15, 0.0127, fine)
    bar.computeBoundingBox()
    expect(bar.boundingBox!.max.z).toBeGreaterThan(0.14)
    expect(bar.boundingBox!.max.z).toBeLessThanOrEqual(0.15 + 1e-9)
  })

  it('has few corners when there are many loops', () => {
    expect(loopBar(0.15, 0.0127, { sides: 3, bend: 1 }).getAttribute('position').count).toBeLessThanOrEqual(
      18,
    )
  })
})

describe('a figure', () => {
  it.each(['standing', 'hanging'] as const)('%s is one unit tall with its feet at the ground', (pose) => {
    const body = figure(pose)
    body.computeBoundingBox()
    const { min, max } = body.boundingBox!
    expect(Math.abs(min.z)).toBeLessThan(0.01)
    expect(max.z).toBeGreaterThan(0.97)
    expect(max.z).toBeLessThan(1.02)
  })

  it('bears its D-ring between the shoulder blades', () => {
    expect(D_RING_PART).toBeGreaterThan(0.75)
    expect(D_RING_PART).toBeLessThan(0.85)
  })
})

describe('a lane', () => {
  it('keeps length times width times clear height free where it is straight', () => {
    const path: Vec3[] = [
      [0, 0, 2],
      [10, 0, 2],
    ]
    expect(volumeOf(facets(stripBody(levelStrip(path, 3.5), 4.4)))).toBeCloseTo(10 * 3.5 * 4.4, 3)
  })

  it('keeps its width through a right-angled bend', () => {
    const path: Vec3[] = [
      [0, 0, 0],
      [10, 0, 0],
      [10, 10, 0],
    ]
    expect(volumeOf(facets(stripBody(levelStrip(path, 2), 1)))).toBeCloseTo(20 * 2, 4)
  })

  it('does not run away at a hairpin', () => {
    const path: Vec3[] = [
      [0, 0, 0],
      [10, 0, 0],
      [0, 0.1, 0],
    ]
    const { left, right } = levelStrip(path, 2)
    for (const p of [...left, ...right]) expect(Math.hypot(p[0], p[1])).toBeLessThan(15)
  })
})

it('a bar of bracing is as long as its ends are apart and square', () => {
  const bar = { from: [0, 0, 0] as Vec3, to: [3, 4, 12] as Vec3, size: 0.1 }
  expect(volumeOf(barsGeometry([bar]))).toBeCloseTo(13 * 0.01, 6)
})

describe('a grid', () => {
  it('covers whole steps and marks every fifth line apart', () => {
    const sheet = wholeSteps({ min: [-0.2, 0], max: [9.7, 5], elevation: 3 }, 1)
    expect(sheet).toEqual({ min: [-1, 0], max: [10, 5], elevation: 3 })
    const all = latticeLines(sheet, 1).length / 6
    const firm = latticeLines(sheet, 1, 5).length / 6
    const fine = latticeLines(sheet, 1, 1, 5).length / 6
    expect(all).toBe(12 + 6)
    expect(firm).toBe(3 + 2)
    expect(fine).toBe(all - firm)
  })
})

describe('what is cut out of the skin', () => {
  const plan = {
    girders: ['A', 'B'].map((id, i) => ({
      id,
      start: [0, 100 + 3 * i, 5],
      end: [9, 100 + 3 * i, 5],
      section,
    })),
    obstacles: [
      { id: 'box', name: 'box', kind: 'box', center: [5, 0, 2], size: [2, 1, 4], turn: 90, margin: 0.5 },
      {
        id: 'lane',
        name: 'lane',
        kind: 'lane',
        path: [
          [0, -10, 0],
          [0, 10, 1],
        ],
        width: 4,
        clearHeight: 5,
      },
      { id: 'ground', name: 'ground', kind: 'ground', elevation: 1 },
      { id: 'bracing', name: 'bracing', kind: 'cross-frame', between: ['A', 'B'], station: 4, barSize: 0.1 },
    ],
  } as unknown as Plan

  const inside = (id: string, at: Vec3): boolean =>
    clashBoxes(plan, [id], new Map()).some((m) => {
      const p = new Vector3(...at).applyMatrix4(m)
      return Math.max(Math.abs(p.x), Math.abs(p.y), Math.abs(p.z)) < 0.5
    })

  it.each<[string, Vec3, boolean]>([
    ['box', [5.4, 0.9, 2], true],
    ['box', [5.9, 0.4, 2], false],
    ['box', [5, 0, 4.4], true],
    ['box', [5, 0, 4.6], false],
    ['box', [5, 0, -0.1], false],
    ['lane', [1.9, 0, 5.4], true],
    ['lane', [1.9, 0, 5.6], false],
    ['lane', [2.1, 0, 3], false],
    ['lane', [0, 9.9, 5.9], true],
    ['ground', [300, -200, 0.9], true],
    ['ground', [0, 0, 1.1], false],
    // Between the webs (101.5 m in the middle); the strut's axis lies a bar's half over the bottom flange: 3.42 m.
    ['bracing', [4, 100.5, 3.42], true],
    ['bracing', [4.06, 100.5, 3.42], false],
    ['bracing', [4, 100.5, 3.5], false],
    ['bracing', [4, 101.5, (3.42 + 4.82) / 2], true],
    ['bracing', [4, 101.5, 3.6], false],
  ])('%s holds %j: %s', (id, at, held) => {
    expect(inside(id, at)).toBe(held)
  })

  it('stands where a travelling box does most harm', () => {
    const [m] = clashBoxes(plan, ['box'], new Map([['box', [20, 0, 2] as Vec3]]))
    const p = new Vector3(20, 0, 2).applyMatrix4(m!)
    expect(Math.max(Math.abs(p.x), Math.abs(p.y), Math.abs(p.z))).toBeLessThan(0.5)
  })
})

describe('the deepest point of a floor', () => {
  it('counts the excess of the fall in time and passes over what is not known', () => {
    const floor = [
      { station: 1, depth: 4, excess: 0.2 },
      { station: 2, depth: null, excess: null },
      { station: 3, depth: 4.1, excess: null },
    ]
    expect(deepest(floor)).toEqual({ station: 1, depth: 4.2 })
    expect(deepest([{ station: 2, depth: null, excess: null }])).toBeNull()
  })
})
