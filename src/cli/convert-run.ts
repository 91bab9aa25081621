/** What `npm run -s convert` does: a plan of any version as one of today's, and part lists between JSON and CSV. */
import { existsSync } from 'node:fs'
import { basename } from 'node:path'
import { fileFault } from '../../electron/files/fault'
import { readText } from '../../electron/files/read-file'
import { writeAtomic } from '../../electron/files/write-atomic'
import { canonical } from '../plan/canonical'
import { MOST_TEXT } from '../plan/json'
import { readParts } from '../plan/part-list/read'
import { writePartsCsv, writePartsJson } from '../plan/part-list/write'
import { readPlan } from '../plan/read'
import type { Part, Plan } from '../plan/types'
import { writePlan } from '../plan/write'
import { readArguments } from './arguments'
import { failed, faultLine, type Tried } from './plan-file'

const HELP = `Usage: npm run -s convert -- FILE [--out FILE] [--to FORM] [--force]

Reads a plan of any version, or a part list as JSON or CSV, and writes it in another form.

  --out FILE   where to write; without it the text goes to standard output
  --to FORM    plan        the plan in today's version and layout (usual for a plan)
               parts-json  the parts alone, as JSON (usual for a part list)
               parts-csv   the parts alone, one a line; usual where FILE ends in .csv
               canonical   sorted keys, no spaces; without its records, this is what the plan's hash is taken of
  --force      write over a file that is there; what it held is kept beside it as .bak
  --help       this text

Exit status: 0 written; 1 written, but something was assumed or looks odd, which standard error tells; 2 not written,
and standard error tells every reason with its place in the file.
`

const FORMS = ['plan', 'parts-json', 'parts-csv', 'canonical'] as const
type Form = (typeof FORMS)[number]

interface Wanted {
  file: string
  out: string | null
  to: Form | null
  force: boolean
}

/** Where the command writes to: standard output and standard error, or a test's own. */
export interface Say {
  out(text: string): void
  error(text: string): void
}

type Source = { plan: Plan | null; parts: readonly Part[]; notes: string[] }

const OPTIONS = {
  out: { type: 'string' },
  to: { type: 'string' },
  force: { type: 'boolean', default: false },
} as const

const wanted = (args: string[]): Tried<Wanted | null> =>
  readArguments(args, OPTIONS, ({ values, positionals }) => {
    const to = FORMS.find((f) => f === values.to) ?? null
    if (values.to !== undefined && !to) return failed(`--to must be one of ${FORMS.join(', ')}`)
    if (positionals.length !== 1) return failed('Name one file to convert. --help tells how.')
    return { ok: true, value: { file: positionals[0]!, out: values.out ?? null, to, force: values.force } }
  })

/** A plan where the text says that it is one, else a part list. */
function sourceOf(text: string): Tried<Source> {
  if (/"format"\s*:\s*"fallroom-plan"/.test(text)) {
    const read = readPlan(text)
    if (!read.ok) return failed(...read.faults.map(faultLine))
    return { ok: true, value: { plan: read.plan, parts: read.plan.parts, notes: read.notes } }
  }
  const read = readParts(text)
  return read.ok
    ? { ok: true, value: { plan: null, parts: read.parts, notes: [] } }
    : failed(...read.faults.map(faultLine))
}

function formOf({ to, out }: Wanted, source: Source): Form {
  if (to) return to
  if (out?.toLowerCase().endsWith('.csv')) return 'parts-csv'
  return source.plan ? 'plan' : 'parts-json'
}

function textOf(form: Form, { plan, parts }: Source): Tried<string> {
  if (form === 'parts-json') return { ok: true, value: writePartsJson(parts) }
  if (form === 'parts-csv') return { ok: true, value: writePartsCsv(parts) }
  if (!plan) return failed('A part list cannot become a plan.')
  return { ok: true, value: form === 'plan' ? writePlan(plan) : canonical(plan) }
}

async function written(text: string, { out, force }: Wanted, say: Say): Promise<Tried<null>> {
  if (out === null) {
    say.out(text)
    return { ok: true, value: null }
  }
  if (!force && existsSync(out)) return failed(`${out} is there already; --force writes over it.`)
  try {
    await writeAtomic(out, text, { backup: true })
    return { ok: true, value: null }
  } catch (error) {
    return failed(fileFault(error, basename(out)).why)
  }
}

async function converted(want: Wanted, say: Say): Promise<Tried<string[]>> {
  const text = await readText(want.file, MOST_TEXT)
  if (!text.ok) return failed(text.why)
  const source = sourceOf(text.value)
  if (!source.ok) return source
  const made = textOf(formOf(want, source.value), source.value)
  if (!made.ok) return made
  const done = await written(made.value, want, say)
  return done.ok ? { ok: true, value: source.value.notes } : done
}

/** Runs the command and gives its exit status. */
export async function convert(args: string[], say: Say): Promise<number> {
  const want = wanted(args)
  if (want.ok && want.value === null) {
    say.out(HELP)
    return 0
  }
  const done = want.ok ? await converted(want.value!, say) : want
  const lines = done.ok ? done.value : done.lines
  for (const line of lines) say.error(`${line}\n`)
  if (!done.ok) return 2
  return done.value.length > 0 ? 1 : 0
}
