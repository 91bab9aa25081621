/** Every text of the papers that a crew reads, in one language. */
import type { DrawingWords } from '../../drawings/drawing'

export type Language = 'en' | 'es' | 'fr'

export const languages: readonly Language[] = ['en', 'es', 'fr']

export interface Words {
  language: Language
  /** The language's own name. */
  name: string
  /** After a heading in the line of its text. */
  colon: string
  feet: string
  /** One of them. */
  foot: string
  inches: string
  caution: string
  notKnown: string
  none: string
  drawing: DrawingWords
  sheet: SheetWords
  table: TableWords
  rope: RopeWords
  steps: StepWords
  checks: CheckWords
  tag: TagWords
}

export interface SheetWords {
  title: string
  line: (name: string) => string
  girder: (name: string) => string
  page: (page: number, of: number) => string
  plan: string
  hash: string
  printed: string
  notApproved: string
  stale: string
  approvedBy: (name: string, date: string) => string
  /** Name of the end where stations begin, as it stands on the girder. */
  startEnd: string
  start: string
  startNote: (firstLoop: string, spacing: string, last: number, fromEnd: string) => string
  startFill: string
  sideNote: string
  /** Which of several rows the loop numbers belong to. */
  rowNote: (row: string, offset: string) => string
  places: string
  allOnCentre: string
  noPlates: string
  madeOf: string
  needed: string
  rescue: string
  rescueText: (method: string, gear: string, people: number, minutes: number) => string
  noRescue: string
  tieBacks: string
  ropeAndTension: string
  temperature: string
  temperatureNote: string
  order: string
  before: string
  below: string
  crew: string
  asBuilt: string
  asBuiltNote: string
  signed: string
  failing: (count: number) => string
  missingLetters: (letters: string) => string
}

export interface TableWords {
  stanchion: string
  end: string
  intermediate: string
  fromStart: string
  fromLast: string
  fromLoop: string
  betweenLoops: string
  atLoop: (n: number) => string
  beyondLoops: string
  offset: string
  centre: string
  left: (length: string) => string
  right: (length: string) => string
  tube: string
  loopRange: (a: number, b: number) => string
  plate: string
  part: string
  tieBack: string
  onStanchion: string
  strapLoop: string
  tensionerLoop: string
  strapLeg: string
  tensionerLeg: string
  strapNeeded: string
  row: (id: string) => string
  check: string
  measured: string
  temperature: string
  tension: string
  worker: string
  mass: string
  connector: string
  what: string
  gap: string
  count: string
}

export interface RopeWords {
  chainOrder: (startStanchion: string, endStanchion: string, pieces: string) => string
  anchor: string
  clamp: string
  rope: string
  eye: string
  tensioner: string
  absorber: string
  noAbsorber: string
  cut: string
  mark: string
  markNote: string
  tail: string
  eyeOffset: string
  takeUp: string
  torque: string
  torqueNote: string
  tension: string
  tensionNote: (temperature: string) => string
  tolerance: string
  torqueText: (poundFeet: number, newtonMetres: number) => string
  today: string
  notToScale: string
}

export interface StepWords {
  protect: string
  compare: string
  parts: string
  count: string
  brackets: string
  plates: string
  heads: string
  tieBacks: string
  spool: string
  layRope: string
  markRope: string
  clampBolts: string
  eyePlace: (offset: string, stanchion: string) => string
  tension: string
  release: string
  measure: string
  inspect: string
}

export interface CheckWords {
  parts: string
  heads: string
  tieBacks: string
  clampBolts: string
  tag: string
  tension: string
  straps: string
  spool: string
  clamp: string
  rope: string
  absorber: string
  brackets: string
  loops: string
  people: (count: number) => string
  temperature: (low: string, high: string) => string
  room: string
  rescue: string
  afterFall: string
}

export interface TagWords {
  title: string
  inspected: string
  date: string
  by: string
  next: string
  workers: (count: number) => string
  line: string
  tension: string
  doNotUse: string
  outOfService: string
  reason: string
  cut: string
}
