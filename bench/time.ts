/**
 * Falls in time: the inner loop against the same loop in C at -O2 (where a C compiler is installed), and whole falls.
 * The loop's figures are per node and step; C and this one take turns, so that both meet the same machine.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { fallInTime } from '../src/solver/time/fall'
import { sweep } from '../src/solver/time/kernel'
import type { TimeFallInput } from '../src/solver/time/types'
import { FIRM_ABSORBER, fallInput, lineModel, worker } from '../tests/unit/time/support'
import { checksum, type Timed, timed } from './harness'

const NODES = 101
const STEPS = 40000
const RUNS = 9

/** One run of the loop as in time-kernel.c: ms and the numbers of the checksum. */
function ourLoop(): { ms: number; values: number[] } {
  const rest = 0.125
  const dt = 2e-5
  const k = 2.6e6 / rest
  const run = new Float64Array([k, 20e-6 * k, rest, dt / (rest * 0.362), 9.80665 * dt, dt])
  const nodes = new Float64Array(4 * NODES)
  const sum = new Float64Array(NODES)
  const out = new Float64Array(13)
  for (let i = 0; i < NODES; i++) nodes[4 * i] = i * rest * 1.0017
  nodes[4 * (NODES >> 1) + 3] = -50
  const t = performance.now()
  for (let s = 0; s < STEPS; s += 2000) steps(nodes, sum, run, out)
  return { ms: performance.now() - t, values: [sum[10]!, nodes[4 * (NODES >> 1) + 1]!] }
}

function steps(nodes: Float64Array, sum: Float64Array, run: Float64Array, out: Float64Array): void {
  for (let s = 0; s < 2000; s++) sweep(nodes, sum, 0, NODES - 1, run, out)
}

/** The C loop, compiled afresh; null without a compiler. */
function compileLoop(dir: string): (() => { ms: number; values: number[] }) | null {
  const source = fileURLToPath(new URL('./time-kernel.c', import.meta.url))
  const program = join(dir, 'loop')
  const made = spawnSync('cc', ['-O2', '-o', program, source, '-lm'])
  if (made.status !== 0) return null
  return () => {
    const out = spawnSync(program, [String(NODES), String(STEPS)], { encoding: 'utf8' }).stdout
    const [ms, ...values] = out.trim().split(' ').map(Number)
    return { ms: ms!, values }
  }
}

function summary(name: string, runs: { ms: number; values: number[] }[], note: string): Timed {
  const ms = runs.map((r) => r.ms).sort((a, b) => a - b)
  const sum = checksum(runs[0]!.values)
  return { name, median: ms[ms.length >> 1]!, low: ms[0]!, high: ms[ms.length - 1]!, checksum: sum, note }
}

const perNode = (t: Timed): number => (t.median * 1e6) / (NODES * STEPS)

/** Both loops in turns, so that their ratio is of the same minutes. */
function loops(): Timed[] {
  const dir = mkdtempSync(join(tmpdir(), 'fallroom-bench-'))
  try {
    const theirs = compileLoop(dir)
    for (let i = 0; i < 3; i++) ourLoop()
    const own: ReturnType<typeof ourLoop>[] = []
    const c: ReturnType<typeof ourLoop>[] = []
    for (let i = 0; i < RUNS; i++) {
      own.push(ourLoop())
      if (theirs) c.push(theirs())
    }
    const name = `inner loop, ${NODES} nodes, ${STEPS} steps`
    const ours = summary(`${name}, this program`, own, '')
    ours.note = `${perNode(ours).toFixed(2)} ns a node and step`
    if (!theirs) return [ours]
    const other = summary(`${name}, C at -O2`, c, '')
    other.note = `${perNode(other).toFixed(2)} ns a node and step`
    ours.note += `, ${(ours.median / other.median).toFixed(2)} times C`
    return [ours, other]
  } finally {
    rmSync(dir, { recursive: true, force: true })
  }
}

/** A whole fall's figures. */
function whole(name: string, input: TimeFallInput, history = false): Timed {
  let note = ''
  const t = timed(
    name,
    () => {
      const got = fallInTime(input, { history })
      if (!got.ok) throw new Error(got.why)
      note = `${got.value.time.toFixed(2)} s of motion, ${got.value.steps} steps`
      return [got.value.tension, got.value.workers[0]!.lowest, got.value.absorberExtension]
    },
    9,
    4,
  )
  return { ...t, note }
}

export function bench(): Timed[] {
  const short = fallInput(lineModel([6.25]), [worker(0, 3.125)])
  const model = lineModel([9, 9, 9, 9], { absorber: FIRM_ABSORBER })
  const four = fallInput(model, [worker(1, 13.5)])
  const held = fallInput(model, [worker(1, 13.5)], 'stiff', 'held')
  return [
    ...loops(),
    whole('figures of a fall, one span of 50 elements', short),
    whole('figures of a fall, four spans of 9 m, sliding', four),
    whole('figures of a fall, four spans of 9 m, held', held),
    whole('the picture of a fall, four spans of 9 m, sliding', four, true),
  ]
}
