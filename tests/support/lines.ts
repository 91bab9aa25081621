/** A line model that has everything: slope, giving ends, an absorber, temperature, uneven spans. */
import type { LineModel } from '../../src/solver/model'

export function fullModel(change: Partial<LineModel> = {}): LineModel {
  return {
    x: [0, 7, 15.5, 21, 30],
    z: [10, 10.4, 10.3, 9.9, 10.6],
    massPerMetre: 0.36,
    thermalExpansion: 1.2e-5,
    axialStiffness: { low: 2.4e6, high: 3.6e6 },
    absorber: {
      onset: { low: 6000, high: 7200 },
      full: { low: 7000, high: 9000 },
      maxExtension: 0.35,
    },
    absorberAt: 'end',
    pretension: 3000,
    pretensionTolerance: 0.1,
    installTemperature: 15,
    serviceTemperature: { low: -20, high: 45 },
    endStiffness: [240e3, 310e3],
    endMass: [6, 7],
    ...change,
  }
}
