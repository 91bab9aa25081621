/** A plan with nothing in it, for the first moment and for "New". */
import { basisPreset } from '../plan/presets'
import type { Plan } from '../plan/types'

export function emptyPlan(units: 'us' | 'si' = 'us'): Plan {
  return {
    format: 'fallroom-plan',
    version: 1,
    title: 'Untitled plan',
    units,
    basis: basisPreset(units === 'us' ? 'us' : 'eu'),
    girders: [],
    lines: [],
    workers: [],
    obstacles: [],
    parts: [],
  }
}
