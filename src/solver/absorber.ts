import { RUN_OUT_STIFFNESS } from './model'

/** An in-line energy absorber at one end of its range: N, N, m. */
export interface AbsorberLaw {
  onset: number
  full: number
  maxExtension: number
}

/**
 * Extension x_a(T), m: nothing below `onset`, linear from there to maxExtension at `full`; past `full` it has run out
 * and the law goes on at 10 MN/m so that the numbers stay honest (mechanics section 3).
 */
export function absorberExtension(law: AbsorberLaw | null, T: number): number {
  if (!law || T <= law.onset) return 0
  if (T <= law.full) return (law.maxExtension * (T - law.onset)) / (law.full - law.onset)
  return law.maxExtension + (T - law.full) / RUN_OUT_STIFFNESS
}

/** dx_a/dT, m/N. */
export function absorberSlope(law: AbsorberLaw | null, T: number): number {
  if (!law || T < law.onset) return 0
  return T < law.full ? law.maxExtension / (law.full - law.onset) : 1 / RUN_OUT_STIFFNESS
}

/** What the absorber adds to the unstretched rope of the chain, m, x_a/(1 + T/EA), and its derivative by T. */
export function addedRope(law: AbsorberLaw | null, T: number, EA: number): { rope: number; slope: number } {
  if (!law || T <= law.onset) return { rope: 0, slope: 0 }
  const x = absorberExtension(law, T)
  const stretch = 1 + T / EA
  return { rope: x / stretch, slope: absorberSlope(law, T) / stretch - x / (EA * stretch * stretch) }
}
