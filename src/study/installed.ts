/** The line as the crew leaves it: nominal pretension, mean EA, install temperature (mechanics sections 2 and 9). */
import { heightAt } from '../solver/catenary'
import type { InstalledLine } from '../solver/installed'
import { CONSTRUCTIONAL_STRETCH, eyeOffset, type TakeUp, takeUp } from '../solver/lengths'
import type { LineInput } from './line-input'
import type { LineStatics } from './line-statics'
import type { LineResults } from './results'

export interface InstalledStudy {
  results: LineResults['installed']
  takeUp: TakeUp | null
  /** S of the whole chain, m. */
  chainLength: number | null
  /** Hardware and absorber in series with the rope, m. */
  hardwareLength: number
  absorberLength: number
  why: string | null
}

/** Sag below the chord in the middle of each span, m. */
function sags(line: InstalledLine, input: LineInput): number[] {
  const { x, z } = input.model
  return line.spans.map((span, i) => {
    const run = x[i + 1]! - x[i]!
    const rise = z[i + 1]! - z[i]!
    return rise / 2 - heightAt(span, run / 2, line.set.stiffness, line.set.weight)
  })
}

export function installedStudy(input: LineInput, statics: LineStatics): InstalledStudy {
  const hardwareLength = input.hardware.reduce((sum, h) => sum + h.length, 0)
  const absorberLength = input.absorber?.length ?? 0
  const spans = input.stanchions.length - 1
  const line = statics.installed('nominal')
  if (!line.ok) {
    const none = {
      tension: null,
      sag: Array<null>(spans).fill(null),
      wireRopeLength: null,
      eyeOffset: null,
      takeUp: null,
    }
    return { results: none, takeUp: null, chainLength: null, hardwareLength, absorberLength, why: line.why }
  }
  const sag = sags(line.value, input)
  const take = takeUp({
    tension: line.value.set.pretension,
    freeLength: line.value.rope,
    axialStiffness: line.value.set.stiffness,
    constructionalStretch: input.rope.constructionalStretch ?? CONSTRUCTIONAL_STRETCH,
    spans: sag.map((s, i) => ({ length: input.model.x[i + 1]! - input.model.x[i]!, sag: s })),
    endStiffness: input.model.endStiffness,
  })
  const results = {
    tension: line.value.set.pretension,
    sag,
    wireRopeLength: line.value.rope - hardwareLength - absorberLength,
    eyeOffset: take && eyeOffset(absorberLength, hardwareLength, take.total),
    takeUp: take?.total ?? null,
  }
  return { results, takeUp: take, chainLength: line.value.rope, hardwareLength, absorberLength, why: null }
}
