import { describe, expect, it } from 'vitest'
import { basisPreset } from '../../src/plan/presets'
import { basisSchema } from '../../src/plan/schema/basis'
import { sectionShapes } from '../../src/plan/sections'

const NAMES = ['us', 'ca', 'eu'] as const

describe('the presets of the basis', () => {
  it.each(NAMES)('%s gives a source for every figure', (name) => {
    const { name: own, sources, ...figures } = basisPreset(name)
    expect(own).toBe(name)
    expect(Object.keys(sources).sort()).toEqual(Object.keys(figures).sort())
    for (const source of Object.values(sources)) expect(source.length).toBeGreaterThan(10)
    expect(basisSchema.safeParse(basisPreset(name)).success).toBe(true)
  })

  it('are copies: changing one leaves the next as it was', () => {
    basisPreset('us').sources.safetyFactor = 'mine'
    expect(basisPreset('us').sources.safetyFactor).toMatch(/1926\.502\(d\)\(8\)/)
  })

  it('has the figures of OSHA 29 CFR 1926.502(d)', () => {
    const us = basisPreset('us')
    // (d)(8), (d)(16)(ii) as printed in SI, (d)(16)(iii) 6 ft, (d)(16)(iv) 3.5 ft
    expect(us.safetyFactor).toBe(2)
    expect(us.maxArrestForce).toBe(8_000)
    expect(us.maxFreeFall).toBeCloseTo(6 * 0.3048, 12)
    expect(us.maxDeceleration).toBeCloseTo(3.5 * 0.3048, 12)
  })

  it('never gives a figure from memory or from practice without that word', () => {
    for (const name of NAMES) {
      for (const source of Object.values(basisPreset(name).sources)) {
        expect(source).toMatch(/OSHA|CSA|EN \d|Quebec|common practice, no source|value from memory/)
      }
    }
    expect(basisPreset('eu').sources.maxArrestForce).toMatch(/from memory/)
    expect(basisPreset('ca').sources.maxFreeFall).toMatch(/from memory/)
  })
})

describe('girder shapes', () => {
  it('have the published depths', () => {
    // PCI Journal, May-June 2021, appendix: Yt + Yb in inches
    const published = { 'aashto-i': 28, 'aashto-ii': 36, 'aashto-iii': 45, 'aashto-iv': 54, 'aashto-v': 63 }
    for (const [id, inches] of Object.entries(published)) {
      const shape = sectionShapes.find((s) => s.id === id)
      expect(shape?.section.depth).toBeCloseTo(inches * 0.0254, 4)
      expect(shape?.sources.depth).toMatch(/PCI Journal/)
      expect(shape?.sources.others).toMatch(/from memory/)
    }
  })

  it('fit together', () => {
    for (const { section } of sectionShapes) {
      expect(section.topThickness + section.bottomThickness).toBeLessThan(section.depth)
      expect(section.webThickness).toBeLessThanOrEqual(Math.min(section.topWidth, section.bottomWidth))
    }
  })
})
