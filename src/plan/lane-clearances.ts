/** Published clear heights over traffic, as presets; each plan keeps the figure itself, to be changed where local rules differ. */
export interface LaneClearance {
  id: string
  name: string
  /** m */
  clearHeight: number
  source: string
}

const standards = 'FHWA design standards for the interstate system, vertical clearance'
const table = 'design table of minimum vertical clearances in a bridge rehabilitation handbook (second-hand)'

export const laneClearances: readonly LaneClearance[] = [
  { id: 'interstate', name: 'interstate, rural, 16 ft', clearHeight: 4.877, source: standards },
  { id: 'urban', name: 'interstate, other urban, 14 ft', clearHeight: 4.267, source: standards },
  { id: 'local', name: 'local road, 14.5 ft', clearHeight: 4.42, source: table },
  { id: 'state', name: 'state road, 15.5 ft', clearHeight: 4.724, source: table },
  { id: 'railway', name: 'railway, 23 ft above the rail', clearHeight: 7.01, source: table },
]
