/** Scales of plots: what one SI unit is in the units that are shown. */
import { FOOT, POUND_FORCE } from '../plan/units/factors'

export interface PlotUnits {
  force: { per: number; name: string }
  length: { per: number; name: string }
  energy: { per: number; name: string }
}

const us: PlotUnits = {
  force: { per: 1 / POUND_FORCE, name: 'lbf' },
  length: { per: 1 / FOOT, name: 'ft' },
  energy: { per: 1 / (POUND_FORCE * FOOT), name: 'ft lbf' },
}

const si: PlotUnits = {
  force: { per: 1e-3, name: 'kN' },
  length: { per: 1, name: 'm' },
  energy: { per: 1e-3, name: 'kJ' },
}

export const convertForPlot = (units: 'us' | 'si'): PlotUnits => (units === 'us' ? us : si)
