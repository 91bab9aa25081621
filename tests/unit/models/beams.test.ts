import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { girderFromBeam } from '../../../src/models/girder/pick'
import { readBeams } from '../../../src/models/ifc/beams'
import type { GirderSection, Vec3 } from '../../../src/plan/types'
import { boxTriangles } from './make'

/** Triangles of an I beam along a line in plan at `angle`, its top rising by `rise` over its length. */
function iBeam(s: GirderSection, length: number, angle: number, rise: number, at: Vec3): Float32Array {
  const half = (w: number): number => w / 2
  const outline: [number, number][] = [
    [half(s.topWidth), 0],
    [half(s.topWidth), -s.topThickness],
    [half(s.webThickness), -s.topThickness],
    [half(s.webThickness), s.bottomThickness - s.depth],
    [half(s.bottomWidth), s.bottomThickness - s.depth],
    [half(s.bottomWidth), -s.depth],
  ]
  const ring = [...outline, ...outline.map(([v, z]): [number, number] => [-v, z]).reverse()]
  const place = (u: number, v: number, z: number): Vec3 => [
    at[0] + u * Math.cos(angle) - v * Math.sin(angle),
    at[1] + u * Math.sin(angle) + v * Math.cos(angle),
    at[2] + z + (rise * u) / length,
  ]
  const out: number[] = []
  ring.forEach(([v, z], i) => {
    const [w, y] = ring[(i + 1) % ring.length]!
    const [a, b, c, d] = [place(0, v, z), place(0, w, y), place(length, w, y), place(length, v, z)]
    out.push(...a, ...b, ...c, ...a, ...c, ...d)
  })
  return Float32Array.from(out)
}

const section: GirderSection = {
  topWidth: 1.07,
  topThickness: 0.13,
  webThickness: 0.18,
  bottomWidth: 0.66,
  bottomThickness: 0.2,
  depth: 1.83,
}

function picked(name: string, triangles: Float32Array) {
  const got = girderFromBeam(name, triangles)
  if (!got.ok) throw new Error(got.why)
  return got.value
}

describe('a beam that becomes a girder', () => {
  it.each([0, 0.4, 1.2, -0.9, Math.PI / 2])(
    'has the ends and the section that it was drawn with, at %f rad',
    (angle) => {
      const { girder, notes } = picked('B', iBeam(section, 24, angle, 0.5, [100, 50, 18]))
      const end: Vec3 = [100 + 24 * Math.cos(angle), 50 + 24 * Math.sin(angle), 18.5]
      girder.start.forEach((v, k) => {
        expect(Math.abs(v - [100, 50, 18][k]!)).toBeLessThan(0.003)
      })
      girder.end.forEach((v, k) => {
        expect(Math.abs(v - end[k]!)).toBeLessThan(0.003)
      })
      for (const [key, value] of Object.entries(girder.section)) {
        expect(Math.abs(value - section[key as keyof GirderSection]), key).toBeLessThan(0.008)
      }
      expect(girder.material).toBe('concrete')
      expect(notes).toEqual([])
    },
  )

  it('tells a thin web as steel, and refuses what is no beam', () => {
    expect(picked('S', iBeam({ ...section, webThickness: 0.012 }, 24, 0, 0, [0, 0, 0])).girder.material).toBe(
      'steel',
    )
    const post = Float32Array.from(boxTriangles([0, 0, 0], [0.3, 0.3, 6]).flat(2))
    expect(girderFromBeam('P', post)).toEqual({ ok: false, why: 'P stands upright: a girder lies' })
    expect(girderFromBeam('N', new Float32Array(0)).ok).toBe(false)
  })
})

/** Public models for trying the importer; the tests run without them too. */
const shared = '../shared/models'
describe.skipIf(!existsSync(`${shared}/beam-straight-i-shape-tessellated.ifc`))(
  'beams of public IFC models',
  () => {
    const beams = async (name: string) => {
      const got = await readBeams(readFileSync(`${shared}/${name}.ifc`))
      if (!got.ok) throw new Error(got.why)
      return got.value
    }

    it('an I beam as a mesh: 1 m long, 100 mm wide, 200 mm deep', async () => {
      const [beam] = await beams('beam-straight-i-shape-tessellated')
      expect(beam!.name).toBe('ExampleBeamName')
      const { girder } = picked(beam!.name, beam!.triangles)
      expect(Math.hypot(...girder.end.map((v, k) => v - girder.start[k]!))).toBeCloseTo(1, 3)
      expect(girder.section.topWidth).toBeCloseTo(0.1, 2)
      expect(girder.section.depth).toBeCloseTo(0.2, 2)
      expect(girder.material).toBe('steel')
    })

    it('finds all beams by name, and a girder in each that lies', async () => {
      const found = await beams('beam-parametric-cross-section')
      expect(found.map((b) => b.name)).toContain('A-5')
      expect(found).toHaveLength(18)
      for (const beam of found) {
        const { girder, notes } = picked(beam.name, beam.triangles)
        // The B beams lie on the edge of a channel: that their top carries nothing is told.
        expect(girder.section.topWidth < 0.05).toBe(beam.name.startsWith('B'))
        expect(notes.join().includes('round or sharp')).toBe(beam.name.startsWith('B'))
      }
    })
  },
)

it('a beam whose plates are thinner than a millimetre still makes a section that a plan can hold', () => {
  const thin = {
    ...section,
    topWidth: 0.0002,
    topThickness: 0.0002,
    bottomWidth: 0.0002,
    bottomThickness: 0.0002,
  }
  const picked = girderFromBeam('thin', iBeam({ ...thin, webThickness: 0.0001 }, 6, 0.3, 0, [0, 0, 5]))
  if (!picked.ok) throw new Error(picked.why)
  const sizes = Object.values(picked.value.girder.section)
  expect(Math.min(...sizes)).toBe(0.001)
  expect(picked.value.notes.join()).toContain('give the width that carries a stanchion')
})
