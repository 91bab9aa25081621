/**
 * `npm run proof`: runs the checks against outside references and writes the README's table of them: case, source,
 * expected, got, difference. `npm run proof -- --check` fails where the README's table is not what the checks give.
 */
import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

interface ProofLine {
  what: string
  source: string
  expected: number
  got: number
  unit: string
}

const FILE = 'reports/proof.jsonl'
const BEGIN = '<!-- proof table: made by npm run proof -->'
const END = '<!-- end of proof table -->'

const digits = (v: number): string =>
  Math.abs(v) >= 1e5 ? v.toFixed(0) : Number(v.toPrecision(5)).toString()

/** Spans that differ by their seed alone stand in one line: the one that differs most. */
const family = (p: ProofLine): string => p.what.replace(/^span \d+:.*?N: /, 'seeded spans: ')

const off = (p: ProofLine): number =>
  p.expected === 0 ? Math.abs(p.got) : Math.abs(p.got / p.expected - 1) * 100

function table(lines: ProofLine[]): string {
  const groups = new Map<string, ProofLine[]>()
  for (const p of lines)
    groups.set(`${family(p)}|${p.source}`, [...(groups.get(`${family(p)}|${p.source}`) ?? []), p])
  const rows = [...groups.values()].map((group) => {
    const worst = group.reduce((a, b) => (off(b) > off(a) ? b : a))
    const name = group.length > 1 ? `${family(worst)} (worst of ${group.length})` : worst.what
    const unit = worst.unit ? ` ${worst.unit}` : ''
    return `| ${name} | ${worst.source} | ${digits(worst.expected)}${unit} | ${digits(worst.got)}${unit} | ${off(worst).toFixed(2)} % |`
  })
  rows.sort()
  return ['| case | source | expected | got | difference |', '|---|---|---|---|---|', ...rows].join('\n')
}

/** Test files that hold something against an outside reference. */
function proving(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((f) => f.endsWith('.test.ts'))
    .map((f) => join(folder, f))
    .filter((f) => readFileSync(f, 'utf8').includes('prove({'))
}

rmSync(FILE, { force: true })
const files = [...proving('src'), ...proving('tests/unit')]
const run = spawnSync('npx', ['vitest', 'run', ...files], {
  stdio: ['ignore', 'ignore', 'inherit'],
  shell: process.platform === 'win32',
})
if (run.status !== 0 || !existsSync(FILE)) {
  console.error('Some checks do not hold, so no table is made. npm run unit tells which.')
  process.exit(1)
}
const lines = readFileSync(FILE, 'utf8')
  .trim()
  .split('\n')
  .map((l) => JSON.parse(l) as ProofLine)
const readme = readFileSync('README.md', 'utf8')
const [from, to] = [readme.indexOf(BEGIN), readme.indexOf(END)]
if (from < 0 || to < from) {
  console.error('README.md has no place for the table.')
  process.exit(1)
}
const made = `${readme.slice(0, from + BEGIN.length)}\n\n${table(lines)}\n\n${readme.slice(to)}`
if (process.argv.includes('--check') && made !== readme) {
  console.error('The table in README.md is not what the checks give. npm run proof writes it.')
  process.exit(1)
}
writeFileSync('README.md', made)
