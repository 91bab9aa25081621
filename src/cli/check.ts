/** `npm run -s check`: computes a plan and prints its findings, for a person or as one JSON document. */
import { study } from '../study/study'
import { readArguments } from './arguments'
import { findingsText } from './findings-text'
import { readModels } from './models'
import { failed, openPlan, type Tried } from './plan-file'
import { runVerb } from './verb'

const HELP = `Usage: npm run -s check -- PLAN [--json] [--energy-only]

Computes a plan and prints its findings, what fails first.

  --json         one results document on standard output and nothing else
  --energy-only  leave the falls in time out; what needs them is told as not known
  --help         this text

Exit status: 0 no finding fails; 1 at least one fails; 2 the file could not be read or is no plan, and standard
error tells every reason with its place in the file. Nothing is ever written.
`

interface Wanted {
  file: string
  json: boolean
  energyOnly: boolean
}

const OPTIONS = { json: { type: 'boolean' }, 'energy-only': { type: 'boolean' } } as const

const wanted = (args: string[]): Tried<Wanted | null> =>
  readArguments(args, OPTIONS, ({ values, positionals }) => {
    if (positionals.length !== 1) return failed('Name one plan to check. --help tells how.')
    const energyOnly = values['energy-only'] === true
    return { ok: true, value: { file: positionals[0]!, json: values.json === true, energyOnly } }
  })

async function check(want: Wanted): Promise<Tried<number>> {
  const opened = await openPlan(want.file)
  if (!opened.ok) return opened
  const { plan, notes } = opened.value
  for (const note of notes) process.stderr.write(`${note}\n`)
  const models = await readModels(plan, want.file)
  const { results } = study(plan, { withoutTime: want.energyOnly, wholeRooms: true, models })
  process.stdout.write(want.json ? `${JSON.stringify(results, null, 1)}\n` : findingsText(plan, results))
  return { ok: true, value: results.findings.some((f) => f.status === 'fail') ? 1 : 0 }
}

process.exitCode = await runVerb(HELP, wanted(process.argv.slice(2)), check)
