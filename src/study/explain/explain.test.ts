import { describe, expect, it } from 'vitest'
import { sample } from '../../../tests/support/sample'
import { disagreements, type Explained, flatten } from '../../solver/explain'
import { type Study, study } from '../study'
import {
  explainDepthAt,
  explainFinding,
  explainLineClearance,
  explainReportedStanchion,
  explainTake,
} from '.'

const studied = (name: string): Study => study(sample(name))

const near = (a: number | null, b: number | null): void => {
  expect(a === null).toBe(b === null)
  if (a !== null && b !== null) expect(Math.abs(a - b)).toBeLessThan(1e-6 * Math.max(1, Math.abs(b)))
}

/** Plain data, every closed form true to its parts, every number finite or null. */
function sound(tree: Explained, name: string): void {
  expect(disagreements(tree), name).toEqual([])
  expect(structuredClone(tree)).toEqual(tree)
  for (const { node } of flatten(tree)) {
    expect(node.value === null || Number.isFinite(node.value), `${name}: ${node.label}`).toBe(true)
    expect(node.source, `${name}: ${node.label}`).not.toBe('')
  }
}

describe.each(['thin-margins', 'much-to-put-right', 'four-girder-bay'])('every number of %s', (name) => {
  const s = studied(name)

  it('each finding with a value has a sum whose root is that value', () => {
    let deep = 0
    for (const finding of s.results.findings) {
      const tree = explainFinding(s, finding)
      if (finding.value === null) continue
      const key = `${finding.rule} ${finding.subject}`
      expect(tree, key).not.toBeNull()
      near(tree!.value, finding.value)
      sound(tree!, key)
      if (tree!.parts.length > 0) deep++
    }
    expect(deep).toBeGreaterThan(20)
  })

  it('each line: governing clearance, depth, take-up and stanchions are those of the results', () => {
    for (const line of s.lines) {
      const clearance = explainLineClearance(s, line)!
      near(clearance.value, line.results.governing.clearance)
      sound(clearance, 'clearance')
      near(explainTake(line)!.value, line.results.installed.takeUp)
      for (const point of [line.results.floor[0]!, line.results.floor[9]!, line.results.floor[20]!]) {
        const depth = explainDepthAt(s, line, point.station)!
        near(depth.value, point.depth)
        sound(depth, 'depth')
      }
      for (const post of line.results.stanchions) {
        const sums = explainReportedStanchion(line, post.id)!
        near(sums.head.shaft.value, post.shaftForce)
        near(sums.head.axial.value, post.axial)
        near(sums.head.baseMoment.value, post.baseMoment)
        sums.head.legs.forEach((leg, i) => {
          near(leg.value, post.legForces[i]!)
        })
        sums.loops?.forEach((loop, i) => {
          near(loop.value, post.loopForces![i]!)
        })
        sound(sums.head.axial, post.id)
        if (sums.balance) expect(Math.abs(sums.balance.value!)).toBeLessThan(1e-5)
      }
    }
  })
})
