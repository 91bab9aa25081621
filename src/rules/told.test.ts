/**
 * What every rule says in worlds where it holds, fails, warns, is not known or is known in part, word by word and sum by
 * sum: told.txt is meant to be read when it changes (`npx vitest run src/rules -u` writes it anew).
 */
import { expect, it } from 'vitest'
import type { Explained } from '../solver/explain'
import type { LineFacts, RuleContext } from './context'
import { explainFinding, findingsOf, rules } from './index'
import { context, demand, tieBackFacts, unknown } from './testing/facts'

const line = (c: RuleContext): LineFacts => c.lines[0]!

/** Everything beyond its limit, each by a figure of its own. */
function bad(c: RuleContext): void {
  const l = line(c)
  const w = l.workers[0]!
  const [first, last] = [l.stanchions[0]!, l.stanchions[1]!]
  Object.assign(l, {
    tension: demand(30e3),
    heldTension: demand(52e3),
    timeTension: 30e3,
    energyTension: 20e3,
    absorberExtension: demand(1.3),
    eyeOffset: 0.1,
    spans: [
      { length: 13.4, slope: 2 },
      { length: 11, slope: 6.2 },
    ],
  })
  l.line = { ...l.line, stanchions: [...l.line.stanchions, { ...l.line.stanchions[1]!, id: 'S3' }] }
  Object.assign(w, { freeFall: demand(2.2), arrestForce: demand(9100) })
  Object.assign(w, { extension: demand(1.4), torn: demand(1.2), worker: { ...w.worker, mass: 150 } })
  Object.assign(first, { shaft: demand(20e3), axial: demand(60e3), loopPull: demand(70e3), boltEdge: 0.1 })
  Object.assign(first, { tieBackCount: 0, beside: { before: 0, after: 2 }, uplift: demand(40e3) })
  first.engaged = first.engaged.slice(0, 2)
  Object.assign(last, { boltEdge: -0.02, loopPull: null, row: null, engaged: [], loopCapacity: null })
  last.beside = { before: 0, after: 0 }
  last.stanchion = { ...last.stanchion, plate: 0.003 }
  const t = tieBackFacts(4, 4)
  t.legs[1] = { ...t.legs[1], farSide: false, across: 0.4, force: demand(45e3) }
  l.tieBacks = [{ ...t, strapNeeded: 6.4 }]
  c.rows[0] = { ...c.rows[0]!, row: { ...c.rows[0]!.row, barDiameter: 0.0095 } }
  Object.assign(c.obstacles[0]!, { gap: -0.35 })
  c.plan.records = []
}

/** Limits met to the last bit, and beside them. */
function edge(c: RuleContext): void {
  const l = line(c)
  Object.assign(l, { tension: demand(25620), eyeOffset: 0.3, spans: [{ length: 12.5, slope: 5 }] })
  Object.assign(l, { absorberExtension: demand(1.07), energyTension: 10e3, timeTension: 12e3 })
  const w = l.workers[0]!
  Object.assign(w, { freeFall: demand(1.83), arrestForce: demand(8000), extension: demand(1.07) })
  Object.assign(w, { torn: demand(1.07), worker: { ...w.worker, mass: 140 } })
  Object.assign(l.stanchions[0]!, { shaft: demand(13350), axial: demand(44500), boltEdge: 0.15 })
  l.stanchions[1]!.stanchion = { ...l.stanchions[1]!.stanchion, plate: 0.0064 }
  l.stanchions[1]!.boltEdge = 0.02
  l.tieBacks = [{ ...tieBackFacts(3, 1), strapNeeded: 6.1 }]
  Object.assign(c.obstacles[0]!, { gap: 0, horizontal: null })
}

const lost = { unknown: 'the line did not converge' }

/** Nothing computed; `atLeast` of each is what is known all the same. */
const forget =
  (atLeast?: number) =>
  (c: RuleContext): void => {
    const l = line(c)
    const gone = (): ReturnType<typeof unknown> => unknown(atLeast)
    Object.assign(l, { tension: gone(), heldTension: gone(), absorberExtension: gone() })
    Object.assign(l, { energyTension: lost, timeTension: lost, eyeOffset: lost })
    const w = l.workers[0]!
    Object.assign(w, { freeFall: gone(), arrestForce: gone(), extension: gone(), torn: gone() })
    for (const s of l.stanchions) {
      Object.assign(s, {
        shaft: gone(),
        axial: gone(),
        heldShaft: gone(),
        heldAxial: gone(),
        loopPull: gone(),
      })
    }
    for (const t of l.tieBacks) {
      for (const leg of t.legs) leg.force = gone()
      Object.assign(t, { strapNeeded: lost, loopsBetween: lost })
    }
    c.obstacles[0]!.gap = lost
  }

/** Little asked and little there: no limit, no absorber, no pull, no shared area. */
function bare(c: RuleContext): void {
  const l = line(c)
  delete c.plan.basis.maxSpan
  Object.assign(l, { absorber: null, absorberExtension: null, hardware: [], tension: demand(0) })
  Object.assign(l, { timeTension: lost, energyTension: 17e3 })
  l.line = { ...l.line, grip: 'held', name: '' }
  for (const s of l.stanchions) Object.assign(s, { shaft: demand(0), axial: demand(-3), loopPull: demand(0) })
  for (const t of l.tieBacks) for (const leg of t.legs) leg.force = demand(0)
  const w = l.workers[0]!
  const { ratedMass: _, ...unrated } = w.connector
  w.connector = { ...unrated, type: 'retractable' }
  Object.assign(c.obstacles[0]!, {
    gap: null,
    horizontal: 2.4,
    line: null,
    station: null,
    worker: null,
    at: null,
  })
}

const WORLDS: [string, RuleContext][] = [
  ['good', context()],
  ['good, US units', context(undefined, 'us')],
  ['bad', context(bad)],
  ['bad, US units', context(bad, 'us')],
  ['at the limits', context(edge)],
  ['not known', context(forget())],
  ['known in part, and that fails', context(forget(90e3))],
  ['known in part, and that holds', context(forget(0.01))],
  ['bare', context(bare)],
]

const figure = (v: number | null | undefined): string =>
  v === null || v === undefined ? '-' : String(Number(v.toPrecision(9)))

function tree(e: Explained, depth = 1): string[] {
  const by = e.formula === undefined ? '' : `, ${e.formula}`
  const head = `${'  '.repeat(depth)}- ${e.label} = ${figure(e.value)} ${e.unit}${by} [${e.source}] ${e.note ?? ''}`
  return [head.trimEnd(), ...e.parts.flatMap((part) => tree(part, depth + 1))]
}

function told(ctx: RuleContext): string[] {
  return findingsOf(ctx).flatMap((f) => {
    const sum = explainFinding(ctx, f)
    return [
      `${f.rule} ${f.subject} ${f.line ?? ''}: ${f.status} ${figure(f.value)} / ${figure(f.limit)} / ${figure(f.margin)} ${f.unit}`,
      `  ${f.text}`,
      `  (${f.source})`,
      ...(sum ? tree(sum) : ['  - no sum']),
    ]
  })
}

it('is what was read and found right', async () => {
  const asked = rules.map((r) => `${r.id} (${r.subject}): ${r.title}. ${r.asks} ${r.source}`)
  const text = [...asked, ...WORLDS.flatMap(([name, ctx]) => ['', `== ${name}`, ...told(ctx)])].join('\n')
  await expect(`${text}\n`).toMatchFileSnapshot('./testing/told.txt')
})
