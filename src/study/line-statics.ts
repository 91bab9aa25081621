/** The static lines of one line at every corner, each solved once: installed, unloaded in service, and line laws. */
import type { Grip } from '../plan/types'
import { type InstalledLine, installedLine, type UnloadedLine, unloadedLine } from '../solver/installed'
import { type LineLaw, lineLaw } from '../solver/line-law'
import type { LineModel, SetName, Solved } from '../solver/model'

export interface LineStatics {
  installed: (set: SetName) => Solved<InstalledLine>
  unloaded: (set: SetName, grip: Grip) => Solved<UnloadedLine>
  /** The law at horizontal distance `at` within a span, up to load `limit` at least. */
  law: (set: SetName, grip: Grip, span: number, at: number, limit: number) => Solved<LineLaw>
}

/**
 * Laws that are kept. Those of one station are asked for one after another by every worker and connector; a line's room has
 * well over a hundred stations, and keeping all their laws cost a third of a study in memory tidied up and moved about.
 */
const LAWS_KEPT = 8

/** Remembers answers by their questions; where `most` is given, the newest so many. */
function remembered<A extends unknown[], R>(
  make: (...args: A) => R,
  most = Number.POSITIVE_INFINITY,
): (...args: A) => R {
  const known = new Map<string, R>()
  return (...args) => {
    const key = args.join('|')
    const found = known.get(key)
    if (found !== undefined) return found
    const made = make(...args)
    known.set(key, made)
    if (known.size > most) known.delete(known.keys().next().value!)
    return made
  }
}

/** Solves lazily: a caller that asks for one corner pays for one corner. `loads` per law: the usual number where absent. */
export function lineStatics(model: LineModel, loads?: number): LineStatics {
  const installed = remembered((set: SetName) => installedLine(model, set))
  const unloaded = remembered((set: SetName, grip: Grip): Solved<UnloadedLine> => {
    const line = installed(set)
    return line.ok ? unloadedLine(model, line.value, grip) : line
  })
  const law = remembered(
    (set: SetName, grip: Grip, span: number, at: number, limit: number): Solved<LineLaw> => {
      const line = unloaded(set, grip)
      return line.ok ? lineLaw(line.value, span, at, limit, loads) : line
    },
    LAWS_KEPT,
  )
  return { installed, unloaded, law }
}
