import { describe, expect, it } from 'vitest'
import { planHash } from '../../src/plan/hash'
import { planFaults, readPlan } from '../../src/plan/read'
import type { Plan } from '../../src/plan/types'
import { writePlan } from '../../src/plan/write'
import { study } from '../../src/study/study'
import { mutated, seeded } from './plan-mutate'
import { type Loose, SAMPLES, sampleText } from './plan-support'

/** `FALLROOM_FUZZ=5000 FALLROOM_SEED=7 npx vitest run tests/unit/plan-fuzz.test.ts` runs more, or others. */
const COUNT = Number(process.env.FALLROOM_FUZZ ?? 500)
const SEED = Number(process.env.FALLROOM_SEED ?? 20310514)
/** How many of the accepted plans are computed too. */
const STUDIED = Math.min(COUNT, Math.max(5, (COUNT - 500) / 40))
/** ms for one file; far above what the slowest takes, so that only a hang is caught. */
const SLOWEST = 5_000

/** Where a document holds a number that is none; null stands for what could not be computed. */
function badNumbers(value: unknown, path: string): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([k, v]) => badNumbers(v, `${path}.${k}`))
}

/** What every accepted plan must have, said without the reader's own code. */
function invariantsHold(plan: Plan): void {
  const numbers = JSON.stringify(plan, (_k, v) => (typeof v === 'number' && !Number.isFinite(v) ? 'BAD' : v))
  expect(numbers).not.toContain('"BAD"')
  const kinds = new Map(plan.parts.map((p) => [p.id, p.kind]))
  for (const line of plan.lines) {
    const girder = plan.girders.find((g) => g.id === line.girder)!
    const { start: a, end: b } = girder
    const length = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2])
    const stations = line.stanchions.map((s) => s.station)
    expect(stations.length).toBeGreaterThanOrEqual(2)
    expect([...stations].sort((x, y) => x - y)).toEqual(stations)
    expect(new Set(stations).size).toBe(stations.length)
    expect(stations.at(-1)!).toBeLessThanOrEqual(length + 0.002)
    expect(line.stanchions.map((s) => s.role)).toEqual(
      stations.map((_, i) => (i === 0 || i === stations.length - 1 ? 'end' : 'intermediate')),
    )
    expect(kinds.get(line.wireRope)).toBe('wire-rope')
    expect(line.hardware.every((h) => kinds.get(h) === 'hardware')).toBe(true)
    expect(
      line.stanchions.every((s) => kinds.get(s.part) === 'stanchion' && kinds.get(s.bracket) === 'bracket'),
    ).toBe(true)
    for (const t of line.tieBacks) {
      expect(line.stanchions.some((s) => s.id === t.stanchion)).toBe(true)
      for (const ref of [t.strapLoop, t.tensionerLoop]) {
        const row = girder.loops.find((r) => r.id === ref.row)!
        expect(ref.index < row.count && ref.index >= 0 && Number.isInteger(ref.index)).toBe(true)
      }
    }
  }
  for (const w of plan.workers) {
    expect(plan.lines.some((l) => l.id === w.line)).toBe(true)
    expect(kinds.get(w.connector)).toBe('connector')
    expect(w.mass).toBeGreaterThan(0)
  }
  const ids = [plan.girders, plan.lines, plan.workers, plan.obstacles, plan.parts].flat().map((x) => x.id)
  expect(new Set(ids).size).toBe(ids.length)
}

describe(`${COUNT} spoilt plan files, seed ${SEED}`, () => {
  it('are refused with paths and words, or are plans', () => {
    const random = seeded(SEED)
    const texts = SAMPLES.map(sampleText)
    let accepted = 0
    for (let i = 0; i < COUNT; i++) {
      const text = mutated(texts[i % texts.length]!, random)
      const began = performance.now()
      const read = readPlan(text)
      expect(performance.now() - began, `seed ${SEED}, file ${i}`).toBeLessThan(SLOWEST)
      if (read.ok) {
        accepted++
        expect(planFaults(read.plan), `seed ${SEED}, file ${i}`).toEqual([])
        invariantsHold(read.plan)
        const again = readPlan(writePlan(read.plan))
        expect(again.ok && planHash(again.plan), `seed ${SEED}, file ${i}`).toBe(planHash(read.plan))
      } else {
        expect(read.faults.length, `seed ${SEED}, file ${i}`).toBeGreaterThan(0)
        for (const f of read.faults) {
          expect(f.path, `seed ${SEED}, file ${i}`).toMatch(/^\$/)
          expect(f.message.length).toBeGreaterThan(8)
          expect(f.message.length).toBeLessThan(600)
        }
      }
    }
    expect(({} as Loose).polluted).toBeUndefined()
    // Both ways out must be taken, or the test tries nothing.
    expect(accepted).toBeGreaterThan(COUNT * 0.02)
    expect(accepted).toBeLessThan(COUNT * 0.9)
    console.log(`${accepted} of ${COUNT} were still plans`)
  })
  it('are computed, where they are plans, without a number that is none', () => {
    const random = seeded(SEED + 1)
    const text = sampleText('thin-margins')
    let studied = 0
    for (let i = 0; studied < STUDIED && i < COUNT * 20; i++) {
      const read = readPlan(mutated(text, random))
      if (!read.ok || read.plan.lines.length === 0) continue
      const { results } = study(read.plan, { withoutTime: true })
      expect(badNumbers(results, `seed ${SEED + 1}, file ${i}`)).toEqual([])
      studied++
    }
    expect(studied).toBeGreaterThanOrEqual(Math.min(STUDIED, 5))
  })
})
