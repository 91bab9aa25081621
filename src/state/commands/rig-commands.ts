import { select, setTool } from '../actions'
import { tell } from '../ask'
import { edit } from '../edit'
import { addLineWithCrew } from '../edits/crewed-line'
import { addWorker } from '../edits/line-edits'
import { stanchionIn } from '../edits/lookup'
import { addStanchion } from '../edits/stanchion-edits'
import { addTieBack } from '../edits/tie-back-edits'
import { lineOfRef } from '../refs'
import { type AppState, app } from '../store'
import { addAndSelect } from './add'
import type { Command } from './command'

/** The line that is meant: of what is selected, else the one on the tape. */
function meantLine(s: AppState = app.getState()): string | null {
  for (const ref of s.selection) {
    const line = lineOfRef(s.plan, ref)
    if (line) return line.id
  }
  return s.plan.lines.some((l) => l.id === s.tapeLine) ? s.tapeLine : null
}

const meantStanchion = (s: AppState): string | undefined =>
  s.selection.find((r) => r.kind === 'stanchion')?.id

/** Opens the search window for the line that is meant, on one of its pages. */
function findCommand(
  id: string,
  label: string,
  tab: 'find' | 'spread' | 'explore',
  shortcut?: string,
): Command {
  return {
    id,
    label,
    group: 'Rig',
    ...(shortcut ? { shortcut } : {}),
    when: (s) => meantLine(s) !== null,
    run: () => {
      const line = meantLine()
      if (line) app.setState({ dialog: { kind: 'find', line, tab } })
    },
  }
}

export const rigCommands: Command[] = [
  {
    id: 'rig.drawLine',
    label: 'Draw a line along a girder',
    group: 'Rig',
    shortcut: 'R',
    when: (s) => s.plan.girders.length > 0,
    run: () => setTool({ kind: 'draw-line', from: null }),
  },
  {
    id: 'rig.lineOnGirder',
    label: 'Put a line on the selected girder',
    group: 'Rig',
    shortcut: 'Shift+R',
    when: (s) => s.selection.some((r) => r.kind === 'girder'),
    run: lineOnGirders,
  },
  {
    id: 'rig.addStanchion',
    label: 'Add a stanchion',
    group: 'Rig',
    shortcut: 'S',
    when: (s) => meantLine(s) !== null,
    run: addInWidestSpan,
  },
  {
    id: 'rig.addTieBack',
    label: 'Add a tie-back',
    group: 'Rig',
    shortcut: 'T',
    when: (s) => meantStanchion(s) !== undefined,
    run: () => {
      const id = meantStanchion(app.getState())
      const why = 'No two loops lie far enough from the stanchion on its far side.'
      if (id) addAndSelect('tie-back', `tie back ${id}`, (plan) => addTieBack(plan, id), why)
    },
  },
  {
    id: 'rig.addWorker',
    label: 'Add a worker',
    group: 'Rig',
    shortcut: 'W',
    when: (s) => meantLine(s) !== null,
    run: () => {
      const line = meantLine()
      if (line) addAndSelect('worker', 'add a worker', (plan) => addWorker(plan, line))
    },
  },
  {
    id: 'rig.copyLine',
    label: 'Copy the line to other girders',
    group: 'Rig',
    shortcut: 'Shift+C',
    when: (s) => meantLine(s) !== null && s.plan.girders.length > 1,
    run: () => {
      const line = meantLine()
      if (line) app.setState({ dialog: { kind: 'copy-line', line } })
    },
  },
  findCommand('rig.find', 'Find a layout for the line', 'find', 'Shift+F'),
  findCommand('rig.spread', 'Spread what is uncertain', 'spread'),
  findCommand('rig.explore', 'Explore where passing ends', 'explore'),
  {
    id: 'rig.rescue',
    label: 'Record the rescue plan of the line',
    group: 'Rig',
    when: (s) => meantLine(s) !== null,
    run: () => {
      const line = meantLine()
      if (line) app.setState({ dialog: { kind: 'rescue', line } })
    },
  },
  {
    id: 'rig.parts',
    label: 'Parts library',
    group: 'Rig',
    shortcut: 'P',
    run: () => app.setState({ dialog: { kind: 'parts' } }),
  },
  {
    id: 'rig.basis',
    label: 'Limits and margins',
    group: 'Rig',
    run: () => app.setState({ dialog: { kind: 'basis' } }),
  },
  {
    id: 'rig.next',
    label: 'Next stanchion along the line',
    group: 'Rig',
    shortcut: 'Period',
    when: (s) => meantLine(s) !== null,
    run: () => stepAlong(1),
  },
  {
    id: 'rig.back',
    label: 'Stanchion before along the line',
    group: 'Rig',
    shortcut: 'Comma',
    when: (s) => meantLine(s) !== null,
    run: () => stepAlong(-1),
  },
]

/** A proposed line over the whole length of each selected girder. */
function lineOnGirders(): void {
  const girders = app.getState().selection.filter((r) => r.kind === 'girder')
  const made: string[] = []
  edit(girders.length === 1 ? 'put on a line' : `put on ${girders.length} lines`, (draft) => {
    for (const ref of girders) {
      const id = addLineWithCrew(draft, ref.id, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY)
      if (id) made.push(id)
    }
    return made.length > 0
  })
  const first = made[0]
  if (first) select({ kind: 'line', id: first })
  if (made.length < girders.length)
    tell('A girder without room for two stanchions and their tie-backs got no line.', 'look')
}

function addInWidestSpan(): void {
  const state = app.getState()
  const line = state.plan.lines.find((l) => l.id === meantLine(state))
  if (!line) return
  const at = meantStanchion(state)
  const from = at ? stanchionIn(state.plan, at)?.index : undefined
  const spans = line.stanchions.slice(1).map((s, i) => {
    const before = line.stanchions[i]?.station ?? 0
    return { i, middle: (s.station + before) / 2, length: s.station - before }
  })
  const meant = from === undefined ? [] : spans.filter((s) => s.i === from)
  const [widest] = meant.length > 0 ? meant : [...spans].sort((a, b) => b.length - a.length)
  if (!widest) return
  addAndSelect(
    'stanchion',
    'add a stanchion',
    (plan) => addStanchion(plan, line.id, widest.middle),
    'There is no loop gap left in that span.',
  )
}

function stepAlong(by: 1 | -1): void {
  const state = app.getState()
  const line = state.plan.lines.find((l) => l.id === meantLine(state))
  if (!line) return
  const here = line.stanchions.findIndex((s) => s.id === meantStanchion(state))
  const next = here < 0 ? 0 : Math.min(line.stanchions.length - 1, Math.max(0, here + by))
  const stanchion = line.stanchions[next]
  if (stanchion) select({ kind: 'stanchion', id: stanchion.id })
}
