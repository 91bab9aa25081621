/**
 * `npm run bench`: every bench, one table at the end; named ones with `-- statics gaps`. The ratio is to the committed
 * baseline; `-- --save` writes that. Times of a shared machine say little, ratios within one run more, checksums most.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { ONCE, type Timed } from './harness'
import { type Baseline, HEAD, keyOf, row } from './table'

const file = new URL('./baseline.json', import.meta.url)
const baseline: Baseline = JSON.parse(readFileSync(file, 'utf8'))
const only = process.argv.slice(2).filter((a) => !a.startsWith('--'))
const save = process.argv.includes('--save')
const names = readdirSync(new URL('.', import.meta.url))
  .filter((f) => f.endsWith('.ts'))
  .map((f) => f.slice(0, -3))
  .filter((n) => only.length === 0 || only.includes(n))

const table: string[] = []
for (const name of names) {
  if (name === 'run') continue
  const { bench } = (await import(`./${name}.ts`)) as { bench?: () => Timed[] | Promise<Timed[]> }
  if (!bench) continue
  const start = performance.now()
  const measured = await bench()
  process.stderr.write(`${name}: ${((performance.now() - start) / 1000).toFixed(1)} s\n`)
  table.push(`\n${name}`, ...measured.map((t) => row(name, t, ONCE ? {} : baseline)))
  for (const t of measured) if (save) baseline[keyOf(name, t)] = { median: t.median, checksum: t.checksum }
}
process.stdout.write(`${HEAD}\n${table.join('\n')}\n`)
if (save && !ONCE) writeFileSync(file, `${JSON.stringify(baseline, null, 1)}\n`)
