/** `npm run -s report`: everything that is handed over for a plan, as one folder. */
import { handOver } from '../handover/files/hand-over'
import { meshBounds } from '../handover/mesh-bounds'
import { countedFindings } from '../handover/status'
import { type Language, languages } from '../handover/words'
import type { Plan } from '../plan/types'
import type { Models } from '../study/obstacles'
import { spreadOf } from '../study/spread/spread'
import { study } from '../study/study'
import { readArguments } from './arguments'
import { readModels } from './models'
import { paperFonts } from './paper-fonts'
import { failed, openPlan, type Tried } from './plan-file'
import { standingOf, writeFolder } from './report-folder'
import { runVerb } from './verb'

const HELP = `Usage: npm run -s report -- PLAN --out DIR [--languages en,es,fr] [--revision TEXT] [--against PLAN] [--date DAY]
                              [--spread SAMPLES] [--seed SEED]

Makes the papers of a plan: calculation package, crew sheets, tags, drawings (SVG and DXF), tables (CSV), the fall
room (GLB, STL) and the results (JSON), in the folder DIR. The folder is whole or not there: an earlier hand-over in it is
replaced, other files in it are left alone and nothing is written.

  --out DIR         where the folder goes; the folder around it must be there
  --languages LIST  languages of crew sheets and tags: en, es, fr; all without it
  --revision TEXT   a word for this state of the plan, printed beside its hash
  --against PLAN    adds a page that says what changed since that plan
  --spread SAMPLES  adds a chapter on how far the results spread where uncertain figures vary, from so many samples
  --seed SEED       a whole number that the samples follow from; 1 without it
  --date DAY        the day printed on the papers, as 2026-03-14; today without it
  --help            this text

Exit status: 0 written, no finding fails; 1 written, at least one finding fails; 2 nothing was written, and standard
error tells every reason.
`

interface Wanted {
  file: string
  out: string
  languages: Language[]
  revision: string | null
  against: string | null
  date: string
  /** Samples of a spread, 0: none; and the seed. */
  spread: number
  seed: number
}

const OPTIONS = {
  out: { type: 'string' },
  languages: { type: 'string' },
  revision: { type: 'string' },
  against: { type: 'string' },
  date: { type: 'string' },
  spread: { type: 'string' },
  seed: { type: 'string' },
} as const

const wanted = (args: string[]): Tried<Wanted | null> =>
  readArguments(args, OPTIONS, ({ values, positionals }) => {
    if (positionals.length !== 1) return failed('Name one plan. --help tells how.')
    if (!values.out) return failed('Name a folder with --out. --help tells how.')
    const chosen = languagesOf(values.languages)
    if (!chosen.ok) return chosen
    const spread = wholeNumber('--spread', values.spread, 0, MOST_SAMPLES)
    if (!spread.ok) return spread
    const seed = wholeNumber('--seed', values.seed, 1, 2 ** 31)
    if (!seed.ok) return seed
    const date = values.date ?? new Date().toISOString()
    if (Number.isNaN(Date.parse(date))) return failed(`--date ${date} is no day. Write it as 2026-03-14.`)
    return {
      ok: true,
      value: {
        file: positionals[0]!,
        out: values.out,
        languages: chosen.value,
        revision: values.revision ?? null,
        against: values.against ?? null,
        date,
        spread: spread.value,
        seed: seed.value,
      },
    }
  })

const MOST_SAMPLES = 100_000

function wholeNumber(flag: string, text: string | undefined, absent: number, most: number): Tried<number> {
  if (text === undefined) return { ok: true, value: absent }
  const value = Number(text)
  if (/^\d+$/.test(text) && value <= most) return { ok: true, value }
  return failed(`${flag} ${text} is no whole number from 0 to ${most}.`)
}

function languagesOf(text: string | undefined): Tried<Language[]> {
  if (text === undefined) return { ok: true, value: [...languages] }
  const asked = text.split(',').map((t) => t.trim())
  const unknown = asked.filter((a) => !languages.some((l) => l === a))
  if (unknown.length > 0)
    return failed(`--languages knows ${languages.join(', ')}; not ${unknown.join(', ')}.`)
  return { ok: true, value: languages.filter((l) => asked.includes(l)) }
}

/** A plan with its study. */
async function studied(file: string) {
  const opened = await openPlan(file)
  if (!opened.ok) return opened
  const { plan, notes } = opened.value
  for (const note of notes) process.stderr.write(`${note}\n`)
  const models = await readModels(plan, file)
  return {
    ok: true as const,
    value: { plan, study: study(plan, { models }), models, meshes: meshBounds(plan, models) },
  }
}

/** The spread of every line that has a crew. */
function spreadsOf(plan: Plan, models: Models, { spread: samples, seed }: Wanted) {
  return plan.lines.flatMap(({ id: line }) => {
    const result = spreadOf({ plan, line, samples, seed }, models)
    return result ? [{ line, result }] : []
  })
}

async function report(want: Wanted): Promise<Tried<number>> {
  // Known to be in vain before the work begins.
  const place = await standingOf(want.out)
  if (!place.ok) return place
  const own = await studied(want.file)
  if (!own.ok) return own
  const other = want.against === null ? null : await studied(want.against)
  if (other && !other.ok) return other
  const { models, ...made } = own.value
  const input = {
    ...made,
    spreads: want.spread > 0 ? spreadsOf(made.plan, models, want) : [],
    madeAt: want.date,
    fonts: paperFonts(),
    ...(want.revision === null ? {} : { revision: want.revision }),
  }
  const files = await handOver(input, {
    languages: want.languages,
    progress,
    ...(other ? { compareWith: { plan: other.value.plan, results: other.value.study.results } } : {}),
  })
  const written = await writeFolder(want.out, files)
  if (!written.ok) return written
  const { findings } = own.value.study.results
  for (const file of files) process.stdout.write(`${file.name}\n`)
  process.stdout.write(`${files.length} files in ${written.value}; ${countedFindings(findings)}\n`)
  return { ok: true, value: findings.some((f) => f.status === 'fail') ? 1 : 0 }
}

/** One line that is written over, for a person who watches. */
function progress(share: number, what: string): void {
  if (!process.stderr.isTTY) return
  process.stderr.write(
    `\r${String(Math.round(share * 100)).padStart(3)} % ${what.padEnd(40)}${share === 1 ? '\n' : ''}`,
  )
}

process.exitCode = await runVerb(HELP, wanted(process.argv.slice(2)), report)
