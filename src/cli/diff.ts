/** `npm run -s diff`: what moved between two plans, and which findings changed. */
import { type Comparison, comparePlans, comparisonLists, type Studied } from '../handover/compare'
import { study } from '../study/study'
import { readArguments } from './arguments'
import { readModels } from './models'
import { failed, openPlan, type Tried } from './plan-file'
import { runVerb } from './verb'

const HELP = `Usage: npm run -s diff -- BEFORE AFTER [--json] [--energy-only]

Compares two plans, or two states of one: what was added, removed, moved or changed, and which findings changed.
Records (inspections, approvals, daily checks) are history and not compared.

  --json         one document on standard output and nothing else
  --energy-only  leave the falls in time out of both
  --help         this text

Exit status: 0 nothing that counts differs; 1 something differs; 2 a file could not be read or is no plan, and
standard error tells every reason. Nothing is ever written.
`

interface Wanted {
  before: string
  after: string
  json: boolean
  energyOnly: boolean
}

const OPTIONS = { json: { type: 'boolean' }, 'energy-only': { type: 'boolean' } } as const

const wanted = (args: string[]): Tried<Wanted | null> =>
  readArguments(args, OPTIONS, ({ values, positionals }) => {
    const [before, after] = positionals
    if (positionals.length !== 2 || !before || !after) return failed('Name two plans. --help tells how.')
    const energyOnly = values['energy-only'] === true
    return { ok: true, value: { before, after, json: values.json === true, energyOnly } }
  })

async function studied(file: string, withoutTime: boolean): Promise<Tried<Studied>> {
  const opened = await openPlan(file)
  if (!opened.ok) return failed(...opened.lines.map((l) => `${file}: ${l}`))
  const { plan } = opened.value
  const models = await readModels(plan, file)
  return { ok: true, value: { plan, results: study(plan, { withoutTime, models }).results } }
}

async function diff(want: Wanted): Promise<Tried<number>> {
  const before = await studied(want.before, want.energyOnly)
  const after = await studied(want.after, want.energyOnly)
  if (!before.ok || !after.ok) {
    return failed(...(before.ok ? [] : before.lines), ...(after.ok ? [] : after.lines))
  }
  const comparison = comparePlans(before.value, after.value)
  const text = want.json
    ? `${JSON.stringify({ format: 'fallroom-diff', version: 1, ...comparison }, null, 1)}\n`
    : diffText(comparison, before.value, after.value)
  process.stdout.write(text)
  return { ok: true, value: differs(comparison) ? 1 : 0 }
}

const differs = (c: Comparison): boolean => c.changes.length + c.findings.length + c.governing.length > 0

/** For a person: what moved first, then the numbers, then the findings. */
function diffText(c: Comparison, before: Studied, after: Studied): string {
  const name = (s: Studied): string => `${s.plan.title} (plan ${s.results.planHash.slice(0, 12)})`
  const lists = comparisonLists(c, after.plan, after.plan.units)
  const body = lists.flatMap((l) => ['', l.title, ...l.items.map((item) => `  ${item}`)])
  const none = lists.length === 0 ? ['', 'Nothing that counts differs.'] : []
  return [`before  ${name(before)}`, `after   ${name(after)}`, ...body, ...none, ''].join('\n')
}

process.exitCode = await runVerb(HELP, wanted(process.argv.slice(2)), diff)
