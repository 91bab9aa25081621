import { describe, expect, it } from 'vitest'
import { search } from '../../../src/study/find/search'
import type { FindResult } from '../../../src/study/find/types'
import { bruteForce, smallTask } from '../../support/find-oracle'

function found(task: Parameters<typeof search>[0]): FindResult {
  const steps = search(task)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** More seeds with SEEDS=200; bench/find.ts runs that many. */
const SEEDS = Number(process.env.SEEDS ?? 5)

describe('the search against studying every layout', () => {
  for (let seed = 0; seed < SEEDS; seed++) {
    it(`gives the same count and the same least clearance (seed ${seed})`, () => {
      const task = smallTask(seed)
      const all = bruteForce(task, 4)
      const { best, claims, counts } = found(task)
      const within = best && best.stanchions <= 4 ? best.stanchions : null
      expect(within).toBe(all.stanchions)
      if (!best || within === null) return
      expect(claims.fewest, JSON.stringify(counts)).toBe('proven')
      // Figures nearer than 5 mm count as equal: see rank.ts.
      expect(best.clearance! - all.clearance!).toBeLessThan(0.0051)
      expect(best.clearance! - all.clearance!).toBeGreaterThan(-1e-9)
    })
  }
})
