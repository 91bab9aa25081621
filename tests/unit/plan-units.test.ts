import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as units from '../../src/plan/units'

type System = units.UnitSystem
const SYSTEMS: System[] = ['us', 'si']

const value = (read: units.Parsed): number => {
  if (!read.ok) throw new Error(read.why)
  return read.value
}

describe('a length as people type it', () => {
  it.each([
    ['42"', 1.0668],
    ['42 in', 1.0668],
    ['3\'6"', 1.0668],
    ["3' 6", 1.0668],
    ['3\'-6"', 1.0668],
    ['3′ 6″', 1.0668],
    ['3 ft 6 in', 1.0668],
    ['3 feet 6 inches', 1.0668],
    ['3 ft 6 1/2 in', 1.0795],
    ['3-6 1/2', 1.0795],
    ['3-6', 1.0668],
    ['3\'6½"', 1.0795],
    ['3.5 ft', 1.0668],
    ['3.5', 1.0668],
    ['1/4 in', 0.00635],
    ['1 1/2 ft', 0.4572],
    ['-2 ft 3 in', -0.6858],
    ['−2-3', -0.6858],
    ['1.07 m', 1.07],
    ['1.07m', 1.07],
    ['1070 mm', 1.07],
    ['1,070 mm', 1.07],
    ['107 cm', 1.07],
    ['.5 m', 0.5],
    ['  12 FT ', 3.6576],
    ['1,000 ft', 304.8],
  ])('%s is read in the US system', (text, metres) => {
    expect(value(units.parseLength(text, 'us'))).toBeCloseTo(metres, 12)
  })

  it('takes a bare number in the unit of the system', () => {
    expect(value(units.parseLength('3', 'us'))).toBeCloseTo(0.9144, 12)
    expect(value(units.parseLength('3', 'si'))).toBe(3)
    expect(value(units.parseForce('2', 'us'))).toBeCloseTo(8.896443230521, 9)
    expect(value(units.parseForce('2', 'si'))).toBe(2000)
    expect(value(units.parseTemperature('-40', 'us'))).toBeCloseTo(-40, 12)
  })

  it.each([
    ['', /type a length/],
    ['abc', /no number/],
    ['1,07 m', /comma separates thousands/],
    ['12,5', /comma separates thousands/],
    ['1,0000 m', /comma separates thousands/],
    ['5 kg', /"kg" is no unit of a length/],
    ['5 lbf', /no unit/],
    ['3 ft 14 in', /below 12/],
    ['3 ft 6 1/0 in', /bar/],
    ['1/0 in', /no number/],
    ['1 2 m', /no number/],
    ['1.2.3 m', /no number/],
    ['--3 m', /no number/],
    ['3 m 4 m', /no unit/],
    ['NaN', /no number/],
    ['Infinity m', /no number/],
    ['1e400 m', /no unit/],
    ['constructor', /no number/],
    ['3 constructor', /no unit/],
    ['9'.repeat(400), /too long/],
  ])('%s is refused with a reason', (text, why) => {
    for (const system of SYSTEMS) {
      const read = units.parseLength(text, system)
      expect(read.ok ? String(read.value) : read.why).toMatch(why)
    }
  })

  it('leaves 3-6 alone where metres are meant', () => {
    expect(units.parseLength('3-6', 'si').ok).toBe(false)
  })
})

describe('other measures as people type them', () => {
  // International pound and standard gravity: 1 lbf = 4.4482216152605 N exactly.
  it.each([
    ['1,000 lbf', 4448.2216152605],
    ['1 kip', 4448.2216152605],
    ['1k', 4448.2216152605],
    ['4.45 kN', 4450],
    ['4450 N', 4450],
    ['100 kgf', 980.665],
  ])('the force %s', (text, newtons) => {
    for (const system of SYSTEMS) expect(value(units.parseForce(text, system))).toBeCloseTo(newtons, 9)
  })

  it.each([
    ['220 lb', 99.7903214],
    ['100 kg', 100],
    ['220 lbs', 99.7903214],
  ])('the mass %s', (text, kg) => {
    expect(value(units.parseMass(text, 'si'))).toBeCloseTo(kg, 9)
  })

  it.each([
    ['59 F', 15],
    ['59°F', 15],
    ['59 deg F', 15],
    ['15 C', 15],
    ['-40 F', -40],
    ['15 °C', 15],
  ])('the temperature %s', (text, celsius) => {
    expect(value(units.parseTemperature(text, 'si'))).toBeCloseTo(celsius, 12)
  })

  it('refuses what is colder than anything', () => {
    expect(units.parseTemperature('-300 C', 'si').ok).toBe(false)
    expect(units.parseTemperature('15 K', 'si').ok).toBe(false)
  })

  it('reads angles, stresses, shares and counts', () => {
    expect(value(units.parseAngle('38.2°'))).toBe(38.2)
    // ASTM A615 grade 60: 60 ksi is about 414 MPa.
    expect(value(units.parseQuantity('60 ksi', 'Pa', 'si')) / 1e6).toBeCloseTo(413.685, 3)
    expect(value(units.parseQuantity('10 %', 'fraction', 'us'))).toBeCloseTo(0.1, 12)
    expect(value(units.parseQuantity('4', 'count', 'us'))).toBe(4)
    expect(units.parseQuantity('4.5', 'count', 'us').ok).toBe(false)
    // 35 lbf ft is 47 N m to two figures.
    expect(value(units.parseQuantity('35 lbf ft', 'N m', 'us'))).toBeCloseTo(47.45, 2)
  })
})

describe('what is shown', () => {
  it.each([
    [1.0668, '3 ft 6 in', '1.07 m'],
    [1.0795, '3 ft 6 1/2 in', '1.08 m'],
    [0, '0 in', '0.00 m'],
    [0.30479, '1 ft', '0.30 m'],
    [0.0127, '1/2 in', '12.7 mm'],
    [0.0079375, '5/16 in', '7.9 mm'],
    [-0.6858, '-2 ft 3 in', '-0.69 m'],
    [-1e-9, '0 in', '0.00 m'],
    [30.4799, '100 ft', '30.48 m'],
    [40.2, '131.9 ft', '40.20 m'],
    [Number.NaN, 'not known', 'not known'],
  ])('for %d m', (m, us, si) => {
    expect(units.formatLength(m, 'us')).toBe(us)
    expect(units.formatLength(m, 'si')).toBe(si)
  })

  it.each([
    [4450, '1,000 lbf', '4.45 kN'],
    [64_050, '14,400 lbf', '64.05 kN'],
    [8_000, '1,800 lbf', '8.00 kN'],
    [0, '0 lbf', '0.00 kN'],
    [3, '0.674 lbf', '3.0 N'],
    [Number.POSITIVE_INFINITY, 'not known', 'not known'],
  ])('for %d N', (newtons, us, si) => {
    expect(units.formatForce(newtons, 'us')).toBe(us)
    expect(units.formatForce(newtons, 'si')).toBe(si)
  })

  it('for masses, temperatures and the rest', () => {
    expect(units.formatMass(100, 'us')).toBe('220 lb')
    expect(units.formatMass(100, 'si')).toBe('100 kg')
    expect(units.formatTemperature(15, 'us')).toBe('59 °F')
    expect(units.formatTemperature(15, 'si')).toBe('15 °C')
    expect(units.formatAngle(38.24)).toBe('38.2°')
    expect(units.formatQuantity(null, 'N', 'us')).toBe('not known')
    expect(units.formatQuantity(2.314, 'ratio', 'us')).toBe('2.31')
    expect(units.formatQuantity(0.1, 'fraction', 'us')).toBe('10 %')
    expect(units.formatBoth(1.0668, 'm', 'us')).toBe('3 ft 6 in (1.07 m)')
    expect(units.formatBoth(4, 'count', 'us')).toBe('4')
    expect(units.formatFeetInches(1.0668 + 0.0254 / 16, 16)).toBe('3 ft 6 1/16 in')
    expect(units.formatMillimetres(1.0668)).toBe('1,067 mm')
  })
})

/** What is shown can be typed again: it reads back within half of the step it is shown in, and is shown the same. */
function comesBack(
  unit: string,
  range: { min: number; max: number },
  step: (x: number, s: System) => number,
) {
  const any = fc.double({ ...range, noNaN: true })
  const property = fc.property(any, fc.constantFrom(...SYSTEMS), (x, system) => {
    const shown = units.formatQuantity(x, unit, system)
    const back = value(units.parseQuantity(shown, unit, system))
    expect(Math.abs(back - x)).toBeLessThanOrEqual(step(x, system) * 0.5000001)
    expect(units.formatQuantity(back, unit, system)).toBe(shown)
  })
  // fast-check prints the seed of a failing run.
  fc.assert(property, { numRuns: 2_000 })
}

/** Size of the last of `count` figures of x in a unit; what is below a billionth is shown as nothing. */
const figureStep = (x: number, unit: number, count: number): number => {
  const size = Math.max(Math.abs(x / unit), 1e-9)
  return 10 ** (Math.floor(Math.log10(size)) + 1 - count) * unit * 1.0001 + 2e-9 * unit
}

describe('shown and typed again', () => {
  it('lengths', () => {
    comesBack('m', { min: -200, max: 200 }, (x, system) => {
      if (system === 'us') return Math.abs(x) >= 30.47 ? 0.1 * units.FOOT : units.INCH / 8
      return Math.abs(x) < 0.1 ? 0.0001 : 0.01
    })
  })
  it('short lengths', () => {
    comesBack('m', { min: -0.2, max: 0.2 }, (x, system) => {
      if (system === 'us') return Math.abs(x) < units.INCH ? units.INCH / 16 : units.INCH / 8
      return Math.abs(x) < 0.1 ? 0.0001 : 0.01
    })
  })
  it('forces', () => {
    comesBack('N', { min: -200_000, max: 200_000 }, (x, system) =>
      system === 'us' ? figureStep(x, units.POUND_FORCE, 3) : Math.abs(x) < 10 ? 0.1 : 10,
    )
  })
  it('masses', () => {
    comesBack('kg', { min: 0, max: 400 }, (_x, system) => (system === 'us' ? units.POUND : 1))
  })
  it('temperatures', () => {
    comesBack('degC', { min: -60, max: 120 }, (_x, system) => (system === 'us' ? 0.1 / 1.8 : 0.1) * 1.0001)
  })
  it('angles, ratios, shares', () => {
    comesBack('deg', { min: -90, max: 90 }, () => 0.1001)
    comesBack('ratio', { min: 0, max: 50 }, () => 0.01001)
    comesBack('fraction', { min: 0, max: 1 }, () => 0.000101)
  })
  it('stiffnesses, moments, stresses', () => {
    const one = (us: number, si: number) => (x: number, s: System) => figureStep(x, s === 'us' ? us : si, 3)
    comesBack('N/m', { min: 1_000, max: 1e7 }, one(units.POUND_FORCE / units.INCH, 1_000))
    comesBack('N m', { min: 10, max: 1e5 }, one(units.POUND_FORCE * units.FOOT, 1_000))
    comesBack('Pa', { min: 1e6, max: 1e9 }, one(1_000 * units.PSI, 1e6))
  })

  it('whatever is typed never throws and never gives a number that is none', () => {
    const typed = fc.oneof(
      fc.string({ maxLength: 80 }),
      fc
        .array(fc.constantFrom(...'0123456789 .,-+\'"/ftinmkNlb½°eE()'), { maxLength: 25 })
        .map((a) => a.join('')),
    )
    fc.assert(
      fc.property(
        typed,
        fc.constantFrom(...units.unitNames),
        fc.constantFrom(...SYSTEMS),
        (text, unit, system) => {
          const read = units.parseQuantity(text, unit, system)
          expect(read.ok ? Number.isFinite(read.value) : read.why.length > 0).toBe(true)
        },
      ),
      { numRuns: 5_000 },
    )
  })
})
