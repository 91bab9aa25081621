/** 10,000 samples of a four-span line against 10,000 single static solves of it. */
import type { Plan } from '../src/plan/types'
import { installedLine, unloadedLine } from '../src/solver/installed'
import { solveLoadedChain } from '../src/solver/loaded'
import { lineInput } from '../src/study/line-input'
import { spread } from '../src/study/spread/spread'
import { sample } from '../tests/support/sample'
import { size, type Timed, timed } from './harness'

const SAMPLES = Number(process.env.SAMPLES ?? size(10000, 64))

/** The sample's line with a fifth stanchion and one worker. */
function fourSpans(): Plan {
  const plan = sample('thin-margins')
  const line = plan.lines[0]!
  const [a, b] = [line.stanchions[0]!, line.stanchions[1]!]
  const middle = { ...b, id: 'S9', station: (a.station + b.station) / 2 }
  line.stanchions.splice(1, 0, middle)
  plan.workers = [plan.workers.find((w) => w.line === line.id)!]
  return plan
}

function samples(plan: Plan): Timed {
  return timed(
    `${SAMPLES} samples of a four-span line, four falls each`,
    () => {
      const steps = spread({ plan, line: plan.lines[0]!.id, samples: SAMPLES, seed: 1 })
      for (;;) {
        const step = steps.next()
        if (step.done) return step.value ? [step.value.tension.mean, step.value.clearance.mean] : []
      }
    },
    1,
    0,
  )
}

function solves(plan: Plan): Timed {
  const { model } = lineInput(plan, plan.lines[0]!)
  const installed = installedLine(model, 'soft')
  if (!installed.ok) throw new Error(installed.why)
  const line = unloadedLine(model, installed.value, 'sliding')
  if (!line.ok) throw new Error(line.why)
  const others = line.value.spans.map((s, i) => (i === 1 ? undefined : s))
  const at = (model.x[2]! - model.x[1]!) / 2
  return timed(
    `${SAMPLES} single static solves of it`,
    () =>
      Array.from({ length: SAMPLES }, (_, i) => {
        const P = 500 + (4000 * i) / SAMPLES
        return (
          solveLoadedChain(line.value.chains[0]!, 1, at, P, { H: line.value.spans[1]!.H, others })?.H ?? 0
        )
      }),
    1,
    1,
  )
}

export function bench(): Timed[] {
  const plan = fourSpans()
  const all = samples(plan)
  const single = solves(plan)
  return [{ ...all, note: `${Math.round(all.median / single.median)} times as long` }, single]
}
