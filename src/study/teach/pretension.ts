/** Pretension and absorber as things to grab: tension and clearance of the worst mid-span fall against pretension. */

import { midStation } from '../../geometry/line'
import type { Line, Plan } from '../../plan/types'
import { CORNERS, fallAt } from '../energy-falls'
import { lineInput } from '../line-input'
import { lineStatics } from '../line-statics'
import { studiedEnergyFall } from '../studied-fall'

export interface PretensionState {
  /** Nominal, N. */
  pretension: number
  /** Worst over the corners of the line's own grip; null where one could not be computed. N and m. */
  tension: number | null
  clearance: number | null
  /** Greatest drop of the point of attachment below the unloaded line, m. */
  lineDrop: number | null
  /** Greatest extension of the line absorber, m; null without one. */
  absorber: number | null
}

/** The line with another pretension, and with or without its absorber. */
function changed(line: Line, pretension: number, withAbsorber: boolean): Line {
  return { ...line, pretension, absorber: withAbsorber ? line.absorber : null }
}

/** The worst fall of the line's longest span with this pretension. */
export function pretensionAt(
  plan: Plan,
  line: Line,
  pretension: number,
  withAbsorber: boolean,
): PretensionState {
  const input = lineInput(plan, changed(line, pretension, withAbsorber))
  const statics = lineStatics(input.model)
  const { x } = input.geometry
  const span = x.slice(1).reduce((best, v, i) => (v - x[i]! > x[best + 1]! - x[best]! ? i : best), 0)
  const station = midStation(input.geometry, span)
  const falls = input.workers.flatMap((who) =>
    CORNERS.filter((c) => c.grip === input.grip).map(
      (c) => studiedEnergyFall(fallAt(input, statics, c, station, who), plan.basis.marginBelow).fall,
    ),
  )
  const worst = (figure: (f: (typeof falls)[number]) => number | null): number | null => {
    const all = falls.map(figure)
    return all.length === 0 || all.some((v) => v === null) ? null : Math.max(...(all as number[]))
  }
  return {
    pretension,
    tension: worst((f) => f.tension),
    clearance: worst((f) => f.clearance),
    lineDrop: worst((f) => f.lineDrop),
    absorber: input.absorber ? worst((f) => f.absorberExtension) : null,
  }
}

/** From slack to very tight, for the plot. */
export function pretensionCurve(
  plan: Plan,
  line: Line,
  withAbsorber: boolean,
  steps = 16,
): PretensionState[] {
  const [from, to] = [500, 12000]
  return Array.from({ length: steps }, (_, i) =>
    pretensionAt(plan, line, from + ((to - from) * i) / (steps - 1), withAbsorber),
  )
}

/** How one figure stands against another, in whole per cents: 'just as hard', '12 % harder'. */
function against(now: number, planned: number, more: string, less: string): string {
  const share = Math.round((now / planned - 1) * 100)
  if (share === 0) return 'just as hard'
  return share > 0 ? `${share} % ${more}` : `${-share} % ${less}`
}

function roomAgainst(now: number, planned: number, length: (m: number) => string): string {
  const more = now - planned
  if (Math.abs(more) < 0.005) return 'as much room'
  return more > 0 ? `${length(more)} more room` : `${length(-more)} less room`
}

/** `length` writes a length. */
export function pretensionSentence(
  now: PretensionState,
  planned: PretensionState,
  length: (m: number) => string = (m) => `${(m * 100).toFixed(0)} cm`,
): string {
  if (
    now.tension === null ||
    planned.tension === null ||
    now.clearance === null ||
    planned.clearance === null
  ) {
    return 'At this pretension the line could not be computed.'
  }
  const pull = against(now.tension, planned.tension, 'harder', 'less hard')
  const room = roomAgainst(now.clearance, planned.clearance, length)
  const said = `in a fall the rope pulls ${pull}, and the fall needs ${room}, than as planned`
  if (Math.abs(now.pretension - planned.pretension) < 1)
    return 'As planned. Turn the tensioner and see what it buys.'
  return now.pretension > planned.pretension
    ? `Tighter: ${said}. A tight line is not a strong line.`
    : `Slacker: ${said}. Slack is room that the fall takes.`
}
