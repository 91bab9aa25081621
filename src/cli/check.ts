import { readFileSync } from 'node:fs'
import { readPlan } from '../plan/read'
import { study } from '../study/study'

const file = process.argv[2]!
const got = readPlan(readFileSync(file, 'utf8'))
if (!got.ok) {
  for (const f of got.faults) console.error(`${f.path}: ${f.message}`)
  process.exit(2)
}
const made = study(got.plan)
process.stdout.write(`${JSON.stringify(made.results)}\n`)
process.exitCode = made.results.findings.some((f) => f.status === 'fail') ? 1 : 0
