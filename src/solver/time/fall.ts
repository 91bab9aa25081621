/**
 * A fall in time (mechanics section 5): rope waves, pulleys, absorber, giving ends, bodies on tearing connectors.
 * Figures are those of the first swing (see `pastPeaks`), with or without history.
 */
import { type Solved, solved, unsolved } from '../model'
import { takeTurn } from './body'
import { faultOf } from './check'
import { RESTING_DRAG, restWatch, stopAtFastest } from './drag'
import { figures, wholeRun } from './figures'
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
    const why = yield* firstSwing(run, options)
    if (why) return unsolved(why)
    if (!next) break
    const stuck = yield* comeToRest(run)
    if (stuck) return unsolved(stuck)
    if (next.state === 'standing') takeTurn(next, run.motion)
  }
  const fall = figures(run)
  const after = options.after ?? (options.history ? AFTER : 0)
  const why = yield* goOn(run, options, Math.max(...bodies.map((b) => b.lowestAt)) + after)
  if (why) return unsolved(why)
  return solved({ ...fall, ...wholeRun(run) })
}

/** Until those who fall have passed the peaks of this turn; returns why that cannot be, or null. */
function* firstSwing(run: Run, options: TimeFallOptions): Generator<number, string | null> {
  const { motion } = run
  const began = motion.time
  const share = options.history ? 0.15 : 1
  while (!pastPeaks(run, began)) {
    runBlock(run, options.drag ?? 0)
    if (run.blocks % CALL_BLOCKS !== 0) continue
    if (isLost(run)) return runaway(run)
    if (motion.time - began > LONGEST) return `no lowest point within ${LONGEST} s of motion`
    yield Math.min(0.99, (motion.time - began) / 0.6) * share
  }
  return isLost(run) ? runaway(run) : null
}

/** Goes on until a time, for the picture. */
function* goOn(run: Run, options: TimeFallOptions, until: number): Generator<number, string | null> {
  while (run.motion.time < until) {
    runBlock(run, options.drag ?? 0)
    if (run.blocks % CALL_BLOCKS === 0) yield Math.min(0.99, run.motion.time / until)
  }
  return isLost(run) ? runaway(run) : null
}

const isLost = (run: Run): boolean => run.motion.bodies.some((b) => !Number.isFinite(b.z))

const runaway = (run: Run): string =>
  `the motion ran away at ${run.motion.time.toFixed(4)} s with a step of ${run.motion.dt.toExponential(3)} s`

/**
 * Whether every body of this turn has passed the peaks of its arrest: its lowest point, and a fifth of the time that
 * it took to get there, at least 0.06 s. In 60 random lines the last peak of the first swing (the connector tearing on
 * under late waves) came less than 0.05 s after the lowest point; tension always came before it. What later swings may
 * add (they tear connectors a little more, for the rope alone hardly damps them) is told apart, in `whole`.
 */
function pastPeaks(run: Run, began: number): boolean {
  const { bodies, time } = run.motion
  const ofTurn = bodies.filter((b) => b.state === 'falling' || b.stepsOff < Number.POSITIVE_INFINITY)
  return ofTurn.every((b) => {
    if (b.state === 'standing' || b.arrestForce === 0) return false
    const took = Math.max(0, b.lowestAt - began)
    return time - Math.max(b.lowestAt, began) >= Math.max(0.06, took / 5)
  })
}

/** Damps everything until it hangs still; returns why that cannot be, or null. */
function* comeToRest(run: Run): Generator<number, string | null> {
  const began = run.motion.time
  const still = restWatch(run.motion)
  const stop = stopAtFastest(run.motion)
  while (!still()) {
    runBlock(run, RESTING_DRAG, false)
    stop()
    if (run.motion.time - began > LONGEST_REST) return `not at rest within ${LONGEST_REST} s of heavy damping`
    if (run.blocks % CALL_BLOCKS === 0) yield 0.5
  }
  return null
}
