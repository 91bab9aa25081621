/** `npm run bench`: every bench once, one table at the end. Figures are ratios within one run, not promises. */
import { readdirSync } from 'node:fs'
import { row, type Timed } from './harness'

const only = process.argv.slice(2)
const skip = new Set(['run.ts', 'harness.ts', 'drag-page.ts'])
const names = readdirSync(new URL('.', import.meta.url))
  .filter((f) => f.endsWith('.ts') && !skip.has(f))
  .map((f) => f.slice(0, -3))
  .filter((n) => only.length === 0 || only.includes(n))

const table: string[] = []
for (const name of names) {
  const file = (await import(`./${name}.ts`)) as { bench?: () => Timed[] | Promise<Timed[]> }
  if (!file.bench) continue
  process.stderr.write(`${name} ...\n`)
  table.push(`\n${name}`, ...(await file.bench()).map(row))
}
process.stdout.write(`${table.join('\n')}\n`)
