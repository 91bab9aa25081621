/** What a search costs: a 100 m girder of 330 loops with three choices of parts; growth; small cases by brute force. */
import { search } from '../src/study/find/search'
import type { FindResult, FindTask } from '../src/study/find/types'
import { bruteForce, searchUpTo, smallTask } from '../tests/support/find-oracle'
import { sample } from '../tests/support/sample'
import { ONCE, size, type Timed, timed } from './harness'

/** A level girder with so many loops, a line from end to end, ground below. */
function longTask(loops: number, choices: number): FindTask {
  const plan = sample('thin-margins')
  const line = plan.lines[0]!
  const girder = plan.girders.find((g) => g.id === line.girder)!
  const spacing = 0.303
  girder.end = [girder.start[0] + spacing * loops, girder.start[1], girder.start[2]]
  girder.loops = [{ ...girder.loops[0]!, first: spacing / 2, spacing, count: loops }]
  plan.girders = [girder]
  plan.decks = []
  plan.workers = [plan.workers.find((w) => w.line === line.id)!]
  plan.obstacles = [{ kind: 'ground', id: 'ground', name: 'Ground', elevation: girder.start[2] - 4.75 }]
  line.stanchions = [
    { ...line.stanchions[0]!, station: 7 * spacing },
    { ...line.stanchions.at(-1)!, station: spacing * (loops - 7) },
  ]
  line.tieBacks = line.tieBacks.slice(0, 1)
  const pretensions = [line.pretension, 0.75 * line.pretension, 1.25 * line.pretension].slice(0, choices)
  return { plan, line: line.id, pretensions, withoutTime: true }
}

function run(task: FindTask): FindResult {
  const steps = search(task)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

function one(name: string, task: FindTask): Timed {
  let note = ''
  const made = timed(
    name,
    () => {
      const { best, claims, counts } = run(task)
      const studied = counts.reduce((n, c) => n + c.studied, 0)
      note = `${best?.stanchions ?? 'no'} stanchions, fewest ${claims.fewest}, least ${claims.least}, ${studied} studied whole`
      return best ? [best.stanchions, best.clearance ?? 0] : [0]
    },
    1,
    0,
  )
  return { ...made, note }
}

/** Small cases both ways: how many there are by SEEDS (12 unless told). */
function small(): Timed[] {
  const seeds = Array.from({ length: Number(process.env.SEEDS ?? size(20, 2)) }, (_, i) => i)
  let layouts = 0
  const brute = timed(
    `${seeds.length} small searches by brute force`,
    () =>
      seeds.map((s) => {
        const all = bruteForce(smallTask(s), 4)
        layouts += all.studied
        return all.stanchions ?? 0
      }),
    1,
    0,
  )
  const mine = timed(
    'the same by search',
    () =>
      seeds.map((s) => {
        const k = searchUpTo(smallTask(s), 4)?.best?.stanchions ?? 0
        return k > 4 ? 0 : k
      }),
    1,
    0,
  )
  const same = brute.checksum === mine.checksum ? 'same counts' : 'OTHER COUNTS'
  const ratio = (brute.median / mine.median).toFixed(1)
  return [
    { ...brute, note: `${layouts} layouts studied` },
    { ...mine, note: `${same}; brute force takes ${ratio} times as long` },
  ]
}

export function bench(): Timed[] {
  if (ONCE) return [one('82 loops, one choice', longTask(82, 1)), ...small()]
  return [
    one('330 loops on 100 m, three choices', longTask(330, 3)),
    one('330 loops, one choice', longTask(330, 1)),
    one('165 loops, one choice', longTask(165, 1)),
    one('82 loops, one choice', longTask(82, 1)),
    ...small(),
  ]
}
