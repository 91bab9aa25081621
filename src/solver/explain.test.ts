import { describe, expect, it } from 'vitest'
import { derived, disagreements, type Explained, flatten, given } from './explain'
import { explainClearance, explainDepth, explainEnergyBalance, type FallFigures } from './explain-fall'
import { explainHead, explainLoops } from './explain-head'
import { explainEyeOffset, explainRopeStrength, explainTakeUp } from './explain-line'
import { fallAtStanchion, freeFall } from './fall-energy'
import { takeUp } from './lengths'

/** A fall on a rigid point, where the energy balance has a closed form: figures from the solver itself. */
function rigidFall(type: 'lanyard' | 'retractable'): FallFigures {
  const h = freeFall(type, 1.2, 1.45, 1.05)
  const connector = { stiffness: 60e3, plateau: 4000, maxExtension: 1.07 }
  const fall = fallAtStanchion({ mass: 95, count: 2, freeFall: h, connector })
  if (!fall.ok) throw new Error(fall.why)
  return {
    type,
    length: 1.2,
    dRingHeight: 1.45,
    height: 1.05,
    mass: 95,
    workers: 2,
    stiffness: connector.stiffness,
    plateau: connector.plateau,
    harnessStretch: 0.3,
    marginBelow: 0.61,
    freeFall: h,
    drop: 0,
    extension: fall.value.extension,
    torn: fall.value.torn,
    arrestForce: fall.value.arrestForce,
    work: 0,
    sources: { connector: 'example figures', margin: 'common practice' },
  }
}

const find = (tree: Explained, label: string): Explained => {
  const hit = flatten(tree).find(({ node }) => node.label.startsWith(label))
  if (!hit) throw new Error(`no ${label}`)
  return hit.node
}

describe('explanation of a fall', () => {
  it.each(['lanyard', 'retractable'] as const)('%s: the solver’s figures follow from their parts', (type) => {
    const f = rigidFall(type)
    for (const tree of [explainClearance(f), explainDepth(f), explainEnergyBalance(f)]) {
      expect(disagreements(tree)).toEqual([])
    }
  })

  it('the energy balance closes on the solver’s root', () => {
    const f = rigidFall('lanyard')
    const tree = explainEnergyBalance(f)
    expect(Math.abs(tree.value!) / find(tree, 'Energy of the fall').value!).toBeLessThan(1e-9)
  })

  it('clearance of a foot-level line by the published sum: 6 + 5 ft free fall, 3.5, 1, 3 (sources section 8)', () => {
    const ft = 0.3048
    const f = {
      ...rigidFall('lanyard'),
      length: 6 * ft,
      dRingHeight: 5 * ft,
      height: 0,
      drop: 0,
      harnessStretch: ft,
    }
    const figures = {
      ...f,
      freeFall: 11 * ft,
      arrestForce: 0,
      torn: 3.5 * ft,
      extension: 3.5 * ft,
      marginBelow: 3 * ft,
    }
    expect(explainClearance(figures).value! / ft).toBeCloseTo(18.5, 9)
  })

  it('depth is clearance where the free fall is more than zero, and shallower below that', () => {
    const f = rigidFall('lanyard')
    expect(explainDepth(f).value).toBeCloseTo(explainClearance(f).value!, 12)
    const high = { ...f, height: 3, freeFall: 0 }
    expect(explainDepth(high).value!).toBeCloseTo(explainClearance(high).value! - 0.35, 12)
  })

  it('a value that does not follow from its parts is found, and a missing part makes null', () => {
    const f = rigidFall('lanyard')
    const wrong = disagreements(explainClearance({ ...f, freeFall: f.freeFall! + 0.001 }))
    expect(wrong.map((w) => w.path.at(-1))).toContain('Free fall')
    expect(explainClearance({ ...f, drop: null }).value).toBeNull()
    expect(disagreements(explainClearance({ ...f, drop: null }))).toEqual([])
  })
})

describe('explanation of an end stanchion', () => {
  /** single-12m, S1: head and parts as an independent solver gives them. */
  const tree = explainHead({
    pull: 17039.84,
    down: 2371.529,
    headStiffness: 120e3,
    height: 1.067,
    legs: [
      { label: 'Strap leg', along: 1.35, across: 0, stiffness: 250e3 },
      { label: 'Tensioner leg', along: 1.65, across: 0, stiffness: 250e3 },
    ],
    sources: { stanchion: 'sample figures', tieBack: 'sample figures' },
    corner: 'stiff line, high connector',
  })

  it('gives the check case single-12m', () => {
    expect(tree.legs[0]!.value).toBeCloseTo(6492.794, 1)
    expect(tree.legs[1]!.value).toBeCloseTo(6085.833, 1)
    expect(tree.shaft.value).toBeCloseTo(6835.588, 1)
    expect(tree.axial.value).toBeCloseTo(9702.289, 1)
    expect(tree.baseMoment.value).toBeCloseTo(7293.572, 1)
    expect(Math.min(...tree.angles.map((a) => a.value!))).toBeCloseTo(51.6782, 3)
  })

  it('every figure follows from its parts', () => {
    for (const t of [...tree.legs, ...tree.angles, tree.shaft, tree.axial, tree.baseMoment]) {
      expect(disagreements(t)).toEqual([])
    }
  })

  it('a slack leg takes nothing, and the other and the shaft take it all', () => {
    const legs = [
      { label: 'Strap leg', along: 1.35, across: 0, stiffness: 250e3, slack: true },
      { label: 'Tensioner leg', along: 1.65, across: 0, stiffness: 250e3 },
    ]
    const figures = { pull: 10e3, down: 0, headStiffness: 120e3, height: 1.067, legs, corner: 'by hand' }
    const t = explainHead({ ...figures, sources: { stanchion: 'example', tieBack: 'example' } })
    expect(t.legs[0]!.value).toBe(0)
    const along = t.legs[1]!.value! * (1.65 / Math.hypot(1.65, 1.067))
    expect(along + t.shaft.value!).toBeCloseTo(10e3, 6)
    for (const node of [...t.legs, t.shaft, t.axial]) expect(disagreements(node)).toEqual([])
  })

  it('loops: pulls of the check case, and a balance of zero', () => {
    const load = { loops: [-0.45, -0.15, 0.15, 0.45], boltsAlong: 0.3, axial: 9702.289, moment: 7293.572 }
    const loops = explainLoops(load, ['Loop 6', 'Loop 7', 'Loop 8', 'Loop 9'])!
    expect(loops.loops.map((l) => Math.round(l.value!))).toEqual([7827, 3807, 0, 0])
    expect(Math.abs(loops.balance.value!)).toBeLessThan(1e-5)
    for (const t of [...loops.loops, loops.balance]) expect(disagreements(t)).toEqual([])
    expect(explainLoops({ ...load, loops: [], axial: -1 }, [])).toBeNull()
  })
})

describe('explanation of lengths and strengths', () => {
  it('take-up and eye offset are those of the solver', () => {
    const f = {
      tension: 4450,
      freeLength: 18.2,
      axialStiffness: 3.25e6,
      constructionalStretch: 0.003,
      spans: [{ length: 9.1, sag: 0.01 }],
      endStiffness: [2e5, 2.5e5] as [number, number],
    }
    const take = explainTakeUp(f, { rope: 'example', stanchion: 'example' })
    expect(take.value).toBeCloseTo(takeUp(f)!.total, 12)
    const eye = explainEyeOffset(
      { length: 0.46, source: 'example' },
      [
        { name: 'Shackle', length: 0.06, source: 'example' },
        { name: 'Clamp', length: 0.14, source: 'example' },
      ],
      take,
    )
    expect(eye.value).toBeCloseTo(0.66 + take.value!, 12)
    expect(disagreements(eye)).toEqual([])
    expect(explainEyeOffset(null, [], take).value).toBeCloseTo(take.value!, 12)
  })

  it('strength over the greatest demand', () => {
    const demand = derived('greatest', 'Governing tension', [
      given('energy', 17000, 'N', 'energy'),
      given('in time', 18000, 'N', 'time'),
    ])
    const tree = derived('ratio', 'Safety factor', [explainRopeStrength(64050, 0.8, 'example'), demand])
    expect(tree.value).toBeCloseTo((64050 * 0.8) / 18000, 12)
    expect(disagreements(tree)).toEqual([])
  })

  it('is plain data with a formula wherever there is an equation', () => {
    const tree = derived('sum', 'Sum', [given('a', 1, 'm', 'x'), given('b', 2, 'm', 'x')])
    expect(structuredClone(tree)).toEqual(tree)
    expect(tree).toMatchObject({ value: 3, unit: 'm', formula: 'sum of the parts' })
    expect(derived('ratio', 'r', [given('a', 1, 'm', 'x'), given('b', 0, 'm', 'x')]).value).toBeNull()
  })
})
