/** Measures built from others: stiffness, moment, stress, mass of a rope, shares of a whole. */
import { FOOT, INCH, POUND, POUND_FORCE, PSI } from './factors'
import type { Measure } from './measure'

export const STIFFNESS: Measure = {
  what: 'a stiffness',
  units: {
    'n/m': 1,
    'n/mm': 1_000,
    'kn/m': 1_000,
    'mn/m': 1e6,
    'lbf/in': POUND_FORCE / INCH,
    'lb/in': POUND_FORCE / INCH,
    'lbf/ft': POUND_FORCE / FOOT,
    'kip/in': (1_000 * POUND_FORCE) / INCH,
  },
  bare: { us: 'lbf/in', si: 'kn/m' },
  example: { us: '680 lbf/in', si: '120 kN/m' },
}

export const MOMENT: Measure = {
  what: 'a moment',
  units: {
    'n m': 1,
    nm: 1,
    'kn m': 1_000,
    knm: 1_000,
    'lbf ft': POUND_FORCE * FOOT,
    'ft lbf': POUND_FORCE * FOOT,
    'lb ft': POUND_FORCE * FOOT,
    'ft lb': POUND_FORCE * FOOT,
    'kip ft': 1_000 * POUND_FORCE * FOOT,
  },
  bare: { us: 'lbf ft', si: 'kn m' },
  example: { us: '35 lbf ft', si: '4.7 kN m' },
}

export const STRESS: Measure = {
  what: 'a stress',
  units: { pa: 1, kpa: 1e3, mpa: 1e6, 'n/mm2': 1e6, gpa: 1e9, psi: PSI, ksi: 1_000 * PSI },
  bare: { us: 'ksi', si: 'mpa' },
  example: { us: '60 ksi', si: '420 MPa' },
}

export const LINEAR_MASS: Measure = {
  what: 'a mass for its length',
  units: {
    'kg/m': 1,
    'kg/100m': 0.01,
    'kg/100 m': 0.01,
    'lb/ft': POUND / FOOT,
    'lb/100 ft': POUND / (100 * FOOT),
  },
  bare: { us: 'lb/ft', si: 'kg/m' },
  example: { us: '0.243 lb/ft', si: '0.362 kg/m' },
}

export const TIME: Measure = {
  what: 'a time',
  units: { s: 1, sec: 1, ms: 0.001, min: 60 },
  bare: { us: 's', si: 's' },
  example: { us: '0.5 s', si: '0.5 s' },
}

/** A bare number is a percentage, as its field says. */
export const SHARE: Measure = {
  what: 'a share',
  units: { '%': 0.01, percent: 0.01 },
  bare: { us: '%', si: '%' },
  example: { us: '10 %', si: '10 %' },
}

export const EXPANSION: Measure = {
  what: 'a thermal expansion',
  units: { '/c': 1, '/°c': 1, '/k': 1, '/f': 1.8, '/°f': 1.8 },
  bare: { us: '/f', si: '/c' },
  example: { us: '0.0000069 /F', si: '0.0000125 /C' },
}
