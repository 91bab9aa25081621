/** What the window shows and how, none of it part of the plan or its history. */

import type { Part, PartKind, Plan, Vec3 } from '../plan/types'
import type { ThemeName } from '../theme/tokens'
import type { Ref } from './refs'

export type View = 'site' | 'rig' | 'fall' | 'clashes' | 'teach' | 'handover'
export type ThemeChoice = ThemeName | 'system'
export type UnitSystem = 'us' | 'si'
export type CameraView = 'home' | 'along' | 'across' | 'above' | 'below' | 'worst'

/** What the pointer does in the scene: select and drag, or place points of something new. */
export type Tool =
  | { kind: 'select' }
  | { kind: 'draw-girder'; points: Vec3[] }
  | { kind: 'draw-deck'; points: Vec3[] }
  | { kind: 'draw-lane'; points: Vec3[] }
  | { kind: 'draw-line'; from: { girder: string; station: number } | null }

/** Where the scene's camera should go; `n` grows with each request, so that the same one can be asked for twice. */
export interface CameraRequest {
  n: number
  to: CameraView | { ref: Ref } | { point: Vec3 }
}

/** A figure of something not there yet, drawn by scene and tape as a ghost. */
export interface Ghost {
  points: Vec3[]
  closed: boolean
  text: string
}

export interface FileState {
  /** How the desk knows it; null until it was saved once. */
  id: string | null
  /** Where it lies, for reading only. */
  path: string | null
  name: string | null
  /** Why it can't be saved over, such as a newer version; null where it can. */
  readOnly: string | null
  /** It is one of the samples that come with the program. */
  sample: boolean
}

export interface FindingKey {
  rule: string
  subject: string
}

/** A question in front of everything, answered with one of its choices or, by Escape, with null. */
export interface Question {
  title: string
  text: string
  choices: { value: string; label: string; main?: boolean; grave?: boolean }[]
}

/** A passing word to the person. `n` tells one from the next of the same words. */
export interface Notice {
  n: number
  text: string
  kind: 'done' | 'look' | 'fails'
}

/** A thing, or one of its points, whose place is typed beside it. */
export interface Typing {
  ref: Ref
  /** The end of a girder, the corner of a deck; absent: the whole thing. */
  point?: number
  /** Where it was asked for, px in the window; null: wherever the thing is seen. */
  at: { x: number; y: number } | null
}

/** A window in front of the window, with what it works on. */
export type Dialog =
  | { kind: 'parts'; choose?: { kind: PartKind; label: string; use: (id: string) => void } }
  | { kind: 'part'; part: Part; own: boolean }
  | { kind: 'copy-line'; line: string }
  | { kind: 'copy-girder'; girder: string }
  | { kind: 'girder-table' }
  | { kind: 'loop-table'; girder: string }
  | { kind: 'deck-table' }
  | { kind: 'lane-table' }
  | { kind: 'rescue'; line: string }
  | { kind: 'model'; name: string; bytes: Uint8Array }
  | { kind: 'shortcuts' }
  | { kind: 'basis' }
  | { kind: 'about' }
  | { kind: 'find'; line: string; tab: 'find' | 'mend' | 'spread' | 'explore'; finding?: FindingKey }

export interface WindowState {
  view: View
  themeChoice: ThemeChoice
  /** What the choice comes to now; scene and drawings take their colours by this. */
  theme: ThemeName
  units: UnitSystem
  selection: Ref[]
  hover: Ref | null
  /** The finding whose "why" is open. */
  finding: FindingKey | null
  hoverFinding: FindingKey | null
  /** The line that the tape shows. */
  tapeLine: string | null
  tool: Tool
  ghost: Ghost | null
  camera: CameraRequest
  /** Ids of what is not shown, and of what can't be dragged or deleted; kept on this machine, not part of the plan. */
  hidden: string[]
  locked: string[]
  file: FileState
  /** The plan as last saved or opened; anything else is unsaved. */
  savedPlan: Plan | null
  /** Step of the first-run hint; null when it is closed. */
  hintStep: number | null
  dialog: Dialog | null
  /** The person's own parts, kept on this machine. */
  ownParts: Part[]
  question: Question | null
  notice: Notice | null
  /** Where the context menu is open, px in the window. */
  menu: { x: number; y: number } | null
  /** The thing whose figures are being typed where it stands; null: none. */
  typing: Typing | null
  /** Label of the gesture that is under way; null outside one. */
  gesture: string | null
}

export function freshWindow(): WindowState {
  return {
    view: 'rig',
    themeChoice: 'system',
    theme: 'light',
    units: 'us',
    selection: [],
    hover: null,
    finding: null,
    hoverFinding: null,
    tapeLine: null,
    tool: { kind: 'select' },
    ghost: null,
    camera: { n: 0, to: 'home' },
    hidden: [],
    locked: [],
    file: { id: null, path: null, name: null, readOnly: null, sample: false },
    savedPlan: null,
    hintStep: null,
    dialog: null,
    ownParts: [],
    question: null,
    notice: null,
    menu: null,
    typing: null,
    gesture: null,
  }
}
