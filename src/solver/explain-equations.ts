/**
 * The closed forms that explanations are made of: each with its formula as printed, its unit, where it is from, and the
 * function that gives its value from its parts in order. A figure and its explanation come from the same entry.
 */
import { straightCapacity } from './bracket-capacity'

interface Equation {
  formula: string
  /** '' where the unit is that of the parts. */
  unit: string
  source: string
  /** Value from the values of the parts, in their order; SI, angles in degrees. */
  evaluate: (parts: number[]) => number
}

const STATICS = 'statics'
const sum = (parts: number[]): number => parts.reduce((total, p) => total + p, 0)
const at = (parts: number[], i: number): number => parts[i] ?? Number.NaN

/** An equation over a fixed number of parts. */
function of(
  formula: string,
  unit: string,
  source: string,
  evaluate: (a: number, b: number, c: number, d: number, e: number, f: number, g: number) => number,
): Equation {
  const spread = (p: number[]): number =>
    evaluate(at(p, 0), at(p, 1), at(p, 2), at(p, 3), at(p, 4), at(p, 5), at(p, 6))
  return { formula, unit, source, evaluate: spread }
}

const general = {
  sum: { formula: 'sum of the parts', unit: '', source: STATICS, evaluate: sum },
  greatest: {
    formula: 'greatest of the parts',
    unit: '',
    source: 'comparison',
    evaluate: (p) => Math.max(...p),
  },
  least: { formula: 'least of the parts', unit: '', source: 'comparison', evaluate: (p) => Math.min(...p) },
  ratio: of('strength / demand', 'ratio', 'comparison', (a, b) => a / b),
  difference: of('first - second', '', 'comparison', (a, b) => a - b),
} satisfies Record<string, Equation>

const fall = {
  freeFallLanyard: of(
    'h = max(0, length + dRingHeight - height)',
    'm',
    'geometry of the free fall',
    (length, ring, height) => Math.max(0, length + ring - height),
  ),
  freeFallRetractable: of(
    'h = length + max(0, dRingHeight - height)',
    'm',
    'geometry of the free fall; length is the lock-off distance',
    (length, ring, height) => length + Math.max(0, ring - height),
  ),
  connectorExtension: of('e = F/k + x', 'm', 'connector law', (F, k, x) => F / k + x),
  fallEnergy: of(
    'n m g (h + d + e)',
    'J',
    'conservation of energy',
    (n, m, g, h, d, e) => n * m * g * (h + d + e),
  ),
  absorbedEnergy: of(
    'U(P) + n [F^2/(2k) + Fp x]',
    'J',
    'conservation of energy',
    (U, n, F, k, plateau, x) => U + n * ((F * F) / (2 * k) + plateau * x),
  ),
  totalFall: of(
    'h + d + e + harnessStretch',
    'm',
    'published clearance sum',
    (h, d, e, stretch) => h + d + e + stretch,
  ),
  clearance: of(
    'total fall + marginBelow',
    'm',
    'published clearance sum',
    (total, margin) => total + margin,
  ),
  depthLanyard: of(
    'd + length + e + harnessStretch + dRingHeight - height + marginBelow',
    'm',
    'geometry of the hanging body',
    (d, reach, e, stretch, ring, height, margin) => d + reach + e + stretch + ring - height + margin,
  ),
  depthRetractable: of(
    'd + h + e + harnessStretch + marginBelow',
    'm',
    'geometry of the hanging body',
    (d, h, e, stretch, margin) => d + h + e + stretch + margin,
  ),
} satisfies Record<string, Equation>

const head = {
  legLength: of('l = sqrt(a^2 + b^2 + h^2)', 'm', 'geometry', (a, b, h) => Math.hypot(a, b, h)),
  legAngle: of('acos(h / l)', 'deg', 'geometry', (h, l) => (Math.acos(h / l) * 180) / Math.PI),
  legStiffness: of('k = (s / l) (a / l)^2', 'N/m', STATICS, (s, l, a) => (s / l) * (a / l) ** 2),
  headStiffness: { formula: 'K = ks + sum of k', unit: 'N/m', source: STATICS, evaluate: sum },
  legForce: of('T (k / K) / (a / l)', 'N', STATICS, (T, k, K, a, l) => (T * (k / K)) / (a / l)),
  shaftForce: of('T ks / K', 'N', STATICS, (T, ks, K) => (T * ks) / K),
  legDown: of('leg force h / l', 'N', STATICS, (F, h, l) => (F * h) / l),
  axial: {
    formula: 'downward pull of the rope + sum of the legs’ downward parts',
    unit: 'N',
    source: STATICS,
    evaluate: sum,
  },
  baseMoment: of('shaft force x height', 'N m', STATICS, (F, h) => F * h),
  loopPull: of(
    'max(0, lift + tilt x)',
    'N',
    'rigid tube on one-sided springs, all loops equal',
    (lift, tilt, x) => Math.max(0, lift + tilt * x),
  ),
  boltPush: of(
    'max(0, -100 (lift + tilt x))',
    'N',
    'rigid tube on one-sided springs, bolts a hundred times stiffer',
    (lift, tilt, x) => Math.max(0, -100 * (lift + tilt * x)),
  ),
  straightCapacity: of('2 x bar area x yield', 'N', 'statics, bar yield', (d, y) => straightCapacity(d, y)),
  boltEdge: of(
    'half-width - |offset| - boltsAcross / 2',
    'm',
    'geometry',
    (width, offset, bolts) => width / 2 - Math.abs(offset) - bolts / 2,
  ),
} satisfies Record<string, Equation>

const lengths = {
  ropeStrength: of(
    'breaking strength x termination',
    'N',
    'efficiency of the end termination',
    (b, t) => b * t,
  ),
  takeUpElastic: of('T S / EA', 'm', STATICS, (T, S, EA) => (T * S) / EA),
  takeUpConstructional: of('c S', 'm', 'constructional stretch of a new rope', (c, S) => c * S),
  takeUpSag: of('8 sag^2 / (3 span)', 'm', 'parabola', (sag, span) => (8 * sag * sag) / (3 * span)),
  takeUpHeads: of('T (1/K0 + 1/Kn)', 'm', STATICS, (T, K0, Kn) => T * (1 / K0 + 1 / Kn)),
  eyeOffset: of(
    'absorber length + hardware length + take-up',
    'm',
    'chain of the line laid out',
    (absorber, hardware, take) => absorber + hardware + take,
  ),
} satisfies Record<string, Equation>

export const equations = { ...general, ...fall, ...head, ...lengths }

export type EquationId = keyof typeof equations
