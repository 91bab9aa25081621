/**
 * npm test [-- PART...]: format and lint, unused code, types, unit tests, browser tests, every bench once. Every part
 * runs even if an earlier one fails. The last line is the sum of all.
 */
import { spawnSync } from 'node:child_process'
import { mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { root } from './lib/build.mjs'
import { getTestBrowser } from './lib/get-browser.mjs'
import { closingLine, settle, testParts } from './lib/test-parts.mjs'

/** A part that hangs is ended after this long, ms. */
const LIMIT = 15 * 60 * 1000

const parts = chosenParts()
mkdirSync(join(root, 'test-results'), { recursive: true })
const results = parts.map(runPart)

console.log('\nSummary')
for (const { what, seconds, count, note } of results) {
  const { passed, failed, skipped } = count
  const figures = `${passed} passed, ${failed} failed, ${skipped} skipped`
  console.log(
    `  ${what.padEnd(16)} ${figures.padEnd(40)} ${seconds.toFixed(1).padStart(6)} s${note ? `  ${note}` : ''}`,
  )
}
console.log(`\n${closingLine(results.map((result) => result.count))}`)
process.exitCode = results.some((result) => result.count.failed > 0) ? 1 : 0

function chosenParts() {
  const all = testParts(root)
  const names = process.argv.slice(2)
  const unknown = names.filter((name) => !all.some((part) => part.name === name))
  if (unknown.length > 0) {
    console.error(
      `There is no part ${unknown.join(', ')}. Parts: ${all.map((part) => part.name).join(', ')}.`,
    )
    process.exit(2)
  }
  return names.length > 0 ? all.filter((part) => names.includes(part.name)) : all
}

function runPart(part) {
  console.log(`\n== ${part.what}`)
  const started = performance.now()
  const lacks = part.needsBrowser ? whatIsLacking() : null
  const { count, note } = lacks ? withoutBrowser(lacks) : countRun(part)
  return { what: part.what, seconds: (performance.now() - started) / 1000, count, note }
}

function countRun(part) {
  rmSync(join(root, 'test-results', `${part.name}.json`), { force: true })
  const { status, signal } = spawnSync(process.execPath, part.args, {
    cwd: root,
    env: { ...process.env, ...part.env },
    stdio: 'inherit',
    timeout: LIMIT,
  })
  const note = signal ? `ended after ${LIMIT / 60_000} minutes` : ''
  return { count: settle(status ?? 1, part.count ? safely(part.count) : null), note }
}

/** A report that is missing or broken leaves the exit code to judge. */
function safely(count) {
  try {
    return count()
  } catch {
    return null
  }
}

function whatIsLacking() {
  const browser = getTestBrowser()
  return 'lacks' in browser ? browser.lacks : null
}

/** Where nobody looks at the summary, tests that could not run must not pass for tests that did. */
function withoutBrowser(lacks) {
  console.log(`The browser tests did not run. They lack ${lacks}.`)
  const inCi = Boolean(process.env.CI)
  return {
    count: { passed: 0, failed: inCi ? 1 : 0, skipped: inCi ? 0 : 1 },
    note: 'no browser',
  }
}
