import { describe, expect, it } from 'vitest'
import { bruteForce, searchUpTo, smallTask } from '../../support/find-oracle'

/** More with SEEDS=200 and MOST=4, from another seed with FROM=50: brute force is what takes the time. */
const FROM = Number(process.env.FROM ?? 0)
const SEEDS = Number(process.env.SEEDS ?? 4)
const MOST = Number(process.env.MOST ?? 3)

describe('the search against studying every layout', () => {
  for (let seed = FROM; seed < FROM + SEEDS; seed++) {
    it(`gives the same count and the same least clearance (seed ${seed})`, () => {
      const task = smallTask(seed)
      const all = bruteForce(task, MOST)
      const answer = searchUpTo(task, MOST)
      const best = answer?.best ?? null
      const within = best && best.stanchions <= MOST ? best.stanchions : null
      expect(within).toBe(all.stanchions)
      if (!answer || !best || within === null) return
      const { claims, counts } = answer
      expect(claims.fewest, JSON.stringify(counts)).toBe('proven')
      // Figures nearer than 5 mm count as equal: see rank.ts.
      expect(best.clearance! - all.clearance!).toBeLessThan(0.0051)
      expect(best.clearance! - all.clearance!).toBeGreaterThan(-1e-9)
    })
  }
})
