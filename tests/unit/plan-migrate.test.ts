import { describe, expect, it } from 'vitest'
import { migrate } from '../../src/plan/migrate'
import { readPlan } from '../../src/plan/read'
import { type Loose, sample } from './plan-support'

/** The sample as version 0 wrote it. */
function version0(): Loose {
  const old = structuredClone(sample()) as Loose
  old.version = 0
  for (const line of old.lines) {
    line.bracket = line.stanchions[0].bracket
    line.posts = line.stanchions.map(({ bracket: _, ...s }: Loose) => s)
    delete line.stanchions
    line.tieBacks = line.tieBacks.map((t: Loose) => ({
      id: t.id,
      post: t.stanchion,
      part: t.part,
      strapLoop: t.strapLoop.index + 1,
      tensionerLoop: t.tensionerLoop.index + 1,
    }))
  }
  for (const part of old.parts) if (part.kind === 'wire-rope') part.axialStiffness = 3_200_000
  return old
}

describe('a plan of version 0', () => {
  it('becomes one of today and tells what it had to assume', () => {
    const read = readPlan(JSON.stringify(version0()))
    if (!read.ok) throw new Error(JSON.stringify(read.faults))
    const today = sample()
    const rope = read.plan.parts[0] as Loose
    expect(rope.axialStiffness).toEqual({ low: 3_200_000, high: 3_200_000 })
    rope.axialStiffness = (today.parts[0] as Loose).axialStiffness
    expect(read.plan).toEqual(today)
    expect(read.notes.join('\n')).toMatch(/one stiffness; low and high were both set to it/)
    expect(read.notes.join('\n')).toMatch(/version 0; it was brought to version 1/)
  })

  it('is left as it is by the migration', () => {
    const old = version0()
    const before = structuredClone(old)
    migrate(old)
    expect(old).toEqual(before)
  })

  it('is refused with paths where it is broken', () => {
    const old = version0()
    old.lines[0].posts[1].station = 'x'
    old.lines[0].tieBacks[0].strapLoop = 0
    const read = readPlan(JSON.stringify(old))
    const paths = read.ok ? [] : read.faults.map((f) => f.path)
    expect(paths).toEqual(['$.lines[0].stanchions[1].station', '$.lines[0].tieBacks[0].strapLoop.index'])
  })
})

describe('a plan of today', () => {
  it('goes through unchanged, without a note', () => {
    const plan = sample()
    expect(migrate(plan)).toEqual({ ok: true, document: plan, notes: [] })
  })
})
