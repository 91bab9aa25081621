/** `npm run -s suggest`: searches the layout with fewest stanchions for one line of a plan. */
import { writeFile } from 'node:fs/promises'
import type { Plan } from '../plan/types'
import { writePlan } from '../plan/write'
import { withLayout } from '../study/find/layout'
import { placesOf } from '../study/find/places'
import { search } from '../study/find/search'
import type { Aim, FindResult, FindTask } from '../study/find/types'
import { candidateWords, claimWords, countWords } from '../study/find/words'
import { readArguments } from './arguments'
import { CAUTION } from './findings-text'
import { readModels } from './models'
import { failed, openPlan, type Tried } from './plan-file'
import { runVerb } from './verb'

const HELP = `Usage: npm run -s suggest -- PLAN --line ID [--json] [--out FILE]

Searches the layout with fewest stanchions that passes every rule, for one line of a plan.

  --line ID          the line to lay out anew; with one line in the plan it may be left out
  --from M --to M    stretch to cover, m along the girder; else from where the line's ends stand
  --absorbers IDS    part ids to choose from, with commas; none: no absorber
  --connectors IDS   part ids to choose from, with commas
  --pretensions NS   newtons to choose from, with commas
  --aims ORDER       parts, clearance, tension in the order that counts, with commas
  --ends N           gaps tried for each end, outwards (1)
  --tries N          layouts whose falls in time are computed for a count before it is left as not proven (40)
  --energy-only      leave the falls in time out of the verification
  --json             one JSON document on standard output and nothing else
  --out FILE         write the plan with the suggested layout
  --help             this text

Exit status: 0 a layout was found; 1 none passes, and the rule that stops it is told; 2 bad input.
`

interface Wanted {
  file: string
  task: Omit<FindTask, 'plan' | 'line'>
  line: string | undefined
  json: boolean
  out: string | undefined
}

const OPTIONS = {
  line: { type: 'string' },
  from: { type: 'string' },
  to: { type: 'string' },
  absorbers: { type: 'string' },
  connectors: { type: 'string' },
  pretensions: { type: 'string' },
  aims: { type: 'string' },
  ends: { type: 'string' },
  tries: { type: 'string' },
  'energy-only': { type: 'boolean' },
  json: { type: 'boolean' },
  out: { type: 'string' },
} as const

type Values = { [K in keyof typeof OPTIONS]?: string | boolean | undefined }

const AIMS = new Set<string>(['parts', 'clearance', 'tension'])

const list = (text: unknown): string[] =>
  typeof text === 'string' ? text.split(',').map((t) => t.trim()) : []

/** Numbers that the options name; a word that is no number is told. */
function numbers(values: Values, faults: string[]): Partial<FindTask> {
  const number = (name: keyof Values, least: number): number | undefined => {
    const text = values[name]
    if (text === undefined) return undefined
    const value = Number(text)
    if (text === '' || !Number.isFinite(value) || value < least)
      faults.push(`--${name}: ${String(text)} is no number that will do.`)
    return value
  }
  const from = number('from', 0)
  const to = number('to', 0)
  const ends = number('ends', 1)
  const tries = number('tries', 1)
  const pretensions = list(values.pretensions).map(Number)
  if (pretensions.some((p) => !(p > 0))) faults.push('--pretensions: newtons above 0, with commas.')
  return {
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    ...(ends === undefined ? {} : { ends: Math.round(ends) }),
    ...(tries === undefined ? {} : { tries: Math.round(tries) }),
    ...(pretensions.length > 0 ? { pretensions } : {}),
  }
}

const wanted = (args: string[]): Tried<Wanted | null> =>
  readArguments(args, OPTIONS, ({ values, positionals }) => {
    if (positionals.length !== 1) return failed('Name one plan. --help tells how.')
    const faults: string[] = []
    const aims = list(values.aims)
    if (aims.some((a) => !AIMS.has(a))) faults.push('--aims: parts, clearance, tension in some order.')
    const task: Wanted['task'] = {
      ...numbers(values, faults),
      absorbers: list(values.absorbers).map((a) => (a === 'none' ? null : a)),
      connectors: list(values.connectors),
      withoutTime: values['energy-only'] === true,
      ...(aims.length > 0 ? { aims: aims as Aim[] } : {}),
    }
    if (faults.length > 0) return failed(...faults)
    const { line, out } = values
    return { ok: true, value: { file: positionals[0]!, task, line, out, json: values.json === true } }
  })

/** Why the plan cannot be searched as asked; empty where it can. */
function faultsOf(plan: Plan, line: string, task: Wanted['task']): string[] {
  const has = (id: string, kind: string): boolean => plan.parts.some((p) => p.id === id && p.kind === kind)
  return [
    ...(plan.lines.some((l) => l.id === line) ? [] : [`The plan has no line ${line}.`]),
    ...(task.absorbers ?? []).flatMap((a) =>
      a === null || has(a, 'line-absorber') ? [] : [`The plan has no line absorber ${a}.`],
    ),
    ...(task.connectors ?? []).flatMap((c) =>
      has(c, 'connector') ? [] : [`The plan has no connector ${c}.`],
    ),
    ...(plan.workers.some((w) => w.line === line)
      ? []
      : [`Nobody is on line ${line}: without a worker no fall can be computed.`]),
    ...(task.from !== undefined && task.to !== undefined && task.from >= task.to
      ? ['--from must be less than --to.']
      : []),
  ]
}

function text(plan: Plan, result: FindResult): string {
  const best = result.best
    ? [candidateWords(plan, result.best)]
    : ['No layout was found that passes every rule.']
  const others = result.alternatives.slice(1).map((c) => `Also: ${candidateWords(plan, c)}`)
  const why = result.reasons.map((r) => `${r.rule}: ${r.text}`)
  const parts = [
    best,
    claimWords(result),
    others,
    why,
    result.counts.flatMap(countWords),
    ['Looked at:', ...result.space.map((s) => `  ${s}`)],
  ]
  const limits = (result.best?.limiting ?? []).map((l) => `Least margin: ${l.text}`)
  return `${[...parts.slice(0, 1), limits, ...parts.slice(1), [CAUTION]]
    .filter((p) => p.length > 0)
    .map((p) => p.join('\n'))
    .join('\n\n')}\n`
}

async function suggest(want: Wanted): Promise<Tried<number>> {
  const opened = await openPlan(want.file)
  if (!opened.ok) return opened
  const { plan, notes } = opened.value
  for (const note of notes) process.stderr.write(`${note}\n`)
  const lineId = want.line ?? (plan.lines.length === 1 ? plan.lines[0]!.id : undefined)
  if (lineId === undefined) return failed(`Name the line: ${plan.lines.map((l) => l.id).join(', ')}.`)
  const faults = faultsOf(plan, lineId, want.task)
  if (faults.length > 0) return failed(...faults)
  const result = run({ ...want.task, plan, line: lineId }, await readModels(plan, want.file))
  if (result.best && want.out !== undefined) {
    const line = plan.lines.find((l) => l.id === lineId)!
    const { pattern } = placesOf(plan, line)!
    await writeFile(want.out, writePlan(withLayout(plan, lineId, pattern, result.best.layout)))
  }
  process.stdout.write(
    want.json ? `${JSON.stringify({ line: lineId, ...result }, null, 1)}\n` : text(plan, result),
  )
  return { ok: true, value: result.best ? 0 : 1 }
}

/** Runs the search to its end; what it does is told on standard error where a person watches. */
function run(task: FindTask, models: Parameters<typeof search>[1]): FindResult {
  const steps = search(task, models)
  let said = ''
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
    if (step.value.doing === said || !process.stderr.isTTY) continue
    said = step.value.doing
    process.stderr.write(`${said}\n`)
  }
}

process.exitCode = await runVerb(HELP, wanted(process.argv.slice(2)), suggest)
