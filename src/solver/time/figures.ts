/** What a motion comes to. */
import type { Body } from './body'
import { energyError } from './energy'
import type { Run } from './run'
import type { TimeFall, WorkerFall } from './types'

function workerFall(b: Body): WorkerFall {
  const totalFall = b.standing - b.lowest + b.worker.harnessStretch
  return {
    freeFall: b.freeFall ?? b.standing - b.lowest,
    arrestForce: b.arrestForce,
    connectorExtension: b.extension,
    connectorTorn: b.connector.torn,
    connectorRanOut: b.connector.ranOut,
    lineDrop: b.lineZ - b.ropeLowest,
    totalFall,
    clearance: totalFall + b.worker.marginBelow,
    lowest: b.lowest,
    lowestAt: b.lowestAt,
    atStanchion: b.tie.node < 0,
    pulledOff: b.pulledOff,
  }
}

/** The figures so far: those of the arrest, when taken at the end of the first swing. */
export function figures(run: Run): Omit<TimeFall, 'whole' | 'history' | 'steps' | 'time'> {
  const { motion, peaks, books } = run
  const { absorber, absorberAtRest } = motion.chain
  return {
    tension: peaks.tension,
    tensionAt: { time: peaks.time, element: peaks.element },
    absorberExtension: absorber?.extension ?? absorberAtRest,
    absorberRanOut: absorber !== null && absorber.extension > absorber.maxExtension,
    workers: motion.bodies.map(workerFall),
    heads: peaks.heads.map(({ along, down, together }) => ({ along, down, together: { ...together } })),
    energyError: energyError(motion, books),
    energies: { ...books.last },
    closedAt: motion.time,
  }
}

/** What belongs to all that was computed. */
export function wholeRun(run: Run): Pick<TimeFall, 'whole' | 'history' | 'steps' | 'time' | 'energyError'> {
  const { motion, peaks, books } = run
  return {
    whole: {
      tension: peaks.tension,
      absorberExtension: motion.chain.absorber?.extension ?? motion.chain.absorberAtRest,
      workers: motion.bodies.map(workerFall),
    },
    energyError: energyError(motion, books),
    steps: motion.steps,
    time: motion.time,
    history: run.history?.finish() ?? null,
  }
}
