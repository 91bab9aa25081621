/**
 * A fall in time (mechanics section 5): rope waves, pulleys, absorber, giving ends, bodies on tearing connectors.
 * See `pastPeaks` for when a run that is after figures only ends.
 */
import { type Solved, solved, unsolved } from '../model'
import { type Body, takeTurn } from './body'
import { faultOf } from './check'
import { RESTING_DRAG, restWatch } from './drag'
import { figures } from './figures'
import { openRun, type Run, runBlock } from './run'
import type { TimeFall, TimeFallInput, TimeFallOptions } from './types'

/** Longest time to a lowest point, and to rest, s. */
const LONGEST = 30
/** Longest time from lowest point to rest under drag, s. */
const LONGEST_REST = 20
/** With history: how long past the lowest point, s. */
const AFTER = 3
/** Blocks between calls of progress and cancelled: 25 ms of motion, a thousand steps or two. */
const CALL_BLOCKS = 100

/** Falls in time. Fails with a reason where the input is no line, the run was cancelled, or numbers ran away. */
export function fallInTime(input: TimeFallInput, options: TimeFallOptions = {}): Solved<TimeFall> {
  const turns = fallByParts(input, options)
  for (;;) {
    const next = turns.next()
    if (next.done) return next.value
    if (options.cancelled?.()) return unsolved('cancelled')
    options.progress?.(next.value)
  }
}

/**
 * The same in parts of about a thousand steps, for a caller that wants to breathe between them: yields an estimate of
 * how much is done, from 0 to 1, and returns what `fallInTime` returns.
 */
export function* fallByParts(
  input: TimeFallInput,
  options: TimeFallOptions = {},
): Generator<number, Solved<TimeFall>> {
  const fault = faultOf(input)
  if (fault) return unsolved(fault)
  const run = openRun(input, options)
  const { bodies } = run.motion
  for (;;) {
    const next = bodies.find((b) => b.stepsOff === Number.POSITIVE_INFINITY && b.state === 'standing')
    const why = yield* runTurn(run, options, !next)
    if (why) return unsolved(why)
    if (!next) return solved(figures(run, stopReason(options)))
    const stuck = yield* comeToRest(run)
    if (stuck) return unsolved(stuck)
    if (next.state === 'standing') takeTurn(next, run.motion)
  }
}

const stopReason = (o: TimeFallOptions): string =>
  o.history || o.after !== undefined
    ? `${o.after ?? AFTER} s past the lowest point`
    : 'every body had passed its lowest point and the swing after it'

/** Until those who fall have passed their peaks; returns why that cannot be, or null. */
function* runTurn(run: Run, options: TimeFallOptions, last: boolean): Generator<number, string | null> {
  const { motion } = run
  const began = motion.time
  const after = options.after ?? (options.history ? AFTER : undefined)
  while (!pastPeaks(run, began, last ? after : undefined)) {
    runBlock(run, options.drag ?? 0)
    if (run.blocks % CALL_BLOCKS !== 0) continue
    if (motion.bodies.some((b) => !Number.isFinite(b.z))) return runaway(run)
    if (motion.time - began > LONGEST) return `no lowest point within ${LONGEST} s of motion`
    yield Math.min(0.99, (motion.time - began) / (0.6 + (after ?? 0.2)))
  }
  return motion.bodies.some((b) => !Number.isFinite(b.z)) ? runaway(run) : null
}

const runaway = (run: Run): string =>
  `the motion ran away at ${run.motion.time.toFixed(4)} s with a step of ${run.motion.dt.toExponential(3)} s`

/**
 * Whether every body of this turn has passed its lowest point by `after` seconds, or, where that is not given, by a
 * third of the time that it took to get there, at least 0.1 s.
 */
function pastPeaks(run: Run, began: number, after: number | undefined): boolean {
  const { bodies, time } = run.motion
  const turn = (b: Body): boolean => b.state === 'falling' || b.stepsOff < Number.POSITIVE_INFINITY
  return bodies.filter(turn).every((b) => {
    if (b.state === 'standing' || b.arrestForce === 0) return false
    const took = Math.max(0, b.lowestAt - began)
    return time - Math.max(b.lowestAt, began) >= (after ?? Math.max(0.1, took / 3))
  })
}

/** Damps everything until it hangs still; returns why that cannot be, or null. */
function* comeToRest(run: Run): Generator<number, string | null> {
  const began = run.motion.time
  const still = restWatch(run.motion)
  while (!still()) {
    runBlock(run, RESTING_DRAG)
    if (run.motion.time - began > LONGEST_REST) return `not at rest within ${LONGEST_REST} s of heavy damping`
    if (run.blocks % CALL_BLOCKS === 0) yield 0.5
  }
  return null
}
