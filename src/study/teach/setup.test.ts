import { describe, expect, it } from 'vitest'
import { sample } from '../../../tests/support/sample'
import { exampleFigures, lanyardAt, lanyardSentence, planFigures, pretensionAt, pretensionSentence } from '.'

const plan = sample('thin-margins')
const line = plan.lines[0]!

describe('figures of the trainer’s own plan', () => {
  it('are the plan’s: span, post, limit, room', () => {
    const figures = planFigures(plan, line, 12000, 5000)
    const stations = line.stanchions.map((s) => s.station)
    const spans = stations.slice(1).map((s, i) => s - stations[i]!)
    expect(figures.sag).toEqual({ span: expect.closeTo(Math.max(...spans), 3), force: 5000 })
    expect(figures.tieBack.limit).toBe(plan.basis.minTieBackAngle)
    expect(figures.tieBack.angle).toBeGreaterThan(15)
    expect(figures.lanyard.ground.distance).toBeGreaterThan(0)
    expect(figures.from).toBe(line.name)
  })

  it('say where the example lends its own', () => {
    expect(planFigures(plan, line, null, null).from).toContain('example figures for: forces')
  })
})

describe('sentences', () => {
  const { lanyard } = exampleFigures
  const say = (ground: number): string =>
    lanyardSentence(lanyardAt(lanyard.worker, lanyard.connector, 0.9, 1.8, 1.5), ground)

  it('turn with the room under the feet', () => {
    expect(say(20)).toContain('are left')
    expect(say(1)).toContain('strikes')
  })

  it('tell how a tighter line stands against the planned one', () => {
    const planned = pretensionAt(plan, line, line.pretension, true)
    expect(pretensionSentence(planned, planned)).toContain('As planned')
    expect(pretensionSentence(pretensionAt(plan, line, 11000, true), planned)).toMatch(
      /^Tighter: .*harder.*less room/,
    )
  })
})
