/** A motion with everything that is noted on the way: means, peaks, books, pictures. Goes on in blocks of 0.25 ms. */

import { slow } from './drag'
import { type Books, closeEntry, falling, halfEntry, openBooks } from './energy'
import { HistoryTaker } from './history'
import { BLOCK_TIME, endBlock, type Means, startMeans } from './means'
import { idleTension, startMotion } from './motion'
import { freshPeaks, notePeaks, type Peaks } from './peaks'
import { type Motion, step } from './step'
import type { TimeFallInput, TimeFallOptions } from './types'

/** Blocks between entries in the books: 1 ms. */
const BOOK_BLOCKS = 4

export interface Run {
  motion: Motion
  means: Means
  peaks: Peaks
  books: Books
  history: HistoryTaker | null
  stepsPerBlock: number
  blocks: number
  frameBlocks: number
}

export function openRun(input: TimeFallInput, options: TimeFallOptions): Run {
  const { motion, stepsPerBlock } = startMotion(input, options)
  const books = openBooks(motion)
  step(motion)
  const means = startMeans(motion.sums, stepsPerBlock)
  const entries = Math.round((options.frame ?? 0.008) / BLOCK_TIME / BOOK_BLOCKS)
  const run: Run = {
    motion,
    means,
    peaks: freshPeaks(motion.chain.mesh.headX.length, idleTension(input, motion.chain.mesh)),
    books,
    history: options.history ? new HistoryTaker(motion) : null,
    stepsPerBlock,
    blocks: 0,
    frameBlocks: Math.max(1, entries) * BOOK_BLOCKS,
  }
  books.last = halfEntry(motion, books)
  run.history?.take(means, books.last)
  for (let i = 1; i < stepsPerBlock; i++) step(motion)
  endOfBlock(run)
  return run
}

/** A quarter of a millisecond. Drag damps the motion itself, 1/s, of the rope or of the bodies too. */
export function runBlock(run: Run, drag: number, bodiesToo = true): void {
  const { motion } = run
  const keep = Math.exp(-drag * motion.dt)
  const entry = run.blocks % BOOK_BLOCKS === 0 ? halfEntry(motion, run.books) : null
  const before = entry ? falling(motion) : 0
  for (let i = 0; i < run.stepsPerBlock; i++) {
    step(motion)
    if (i === 0 && entry) closeEntry(motion, run.books, entry, before)
    if (drag > 0) slow(motion, keep, bodiesToo ? keep : 1)
  }
  endOfBlock(run)
}

function endOfBlock(run: Run): void {
  const { motion, means } = run
  run.blocks++
  endBlock(means, motion.sums)
  notePeaks(run.peaks, means.mean, motion.chain.mesh.count - 1, motion.idle, motion.time)
  if (run.blocks % run.frameBlocks === 0) run.history?.take(means, run.books.last)
}
