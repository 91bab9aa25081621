/** What a motion comes to. */
import type { Body } from './body'
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

export function figures(run: Run, stopped: string): TimeFall {
  const { motion, peaks, books } = run
  const absorber = motion.chain.absorber
  return {
    tension: peaks.tension,
    tensionAt: { time: peaks.time, element: peaks.element },
    absorberExtension: absorber?.extension ?? motion.chain.absorberAtRest,
    absorberRanOut: absorber !== null && absorber.extension > absorber.maxExtension,
    workers: motion.bodies.map(workerFall),
    heads: peaks.heads.map(({ along, down, together }) => ({ along, down, together })),
    energyError: books.worst,
    energies: books.last,
    steps: motion.steps,
    time: motion.time,
    stopped,
    history: run.history?.finish() ?? null,
  }
}
