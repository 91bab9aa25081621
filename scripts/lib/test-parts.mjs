import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { playwrightCli } from './get-browser.mjs'

/** @typedef {{ passed: number, failed: number, skipped: number }} Count */

/**
 * The parts of `npm test`, the quick ones first. `count` reads how many tests ran; a part without it counts as one.
 * @param {string} root
 */
export function testParts(root) {
  const bin = (...path) => join(root, 'node_modules', ...path)
  const report = (name) => join(root, 'test-results', `${name}.json`)
  return [
    {
      name: 'format',
      what: 'format and lint',
      args: [bin('@biomejs', 'biome', 'bin', 'biome'), 'check', '.'],
    },
    { name: 'unused', what: 'unused code', args: [bin('knip', 'bin', 'knip.js')] },
    { name: 'types', what: 'types', args: [bin('typescript', 'bin', 'tsc'), '--noEmit', '-p', root] },
    {
      name: 'unit',
      what: 'unit tests',
      args: [
        bin('vitest', 'vitest.mjs'),
        'run',
        '--reporter=default',
        '--reporter=json',
        `--outputFile.json=${report('unit')}`,
      ],
      count: () => unitCount(readJson(report('unit'))),
    },
    {
      name: 'browser',
      what: 'browser tests',
      args: [playwrightCli(), 'test'],
      needsBrowser: true,
      count: () => browserCount(readJson(report('browser'))),
    },
    {
      name: 'bench',
      what: 'every bench once',
      args: [bin('tsx', 'dist', 'cli.mjs'), join(root, 'bench', 'run.ts')],
      env: { FALLROOM_BENCH: 'once' },
    },
  ]
}

/** @returns {Count} */
export function unitCount(report) {
  // A file that cannot be loaded holds no test that could fail.
  const broken = report.testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  )
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + broken.length,
    skipped: report.numPendingTests + (report.numTodoTests ?? 0),
  }
}

/** @returns {Count} */
export function browserCount({ stats, errors }) {
  return {
    passed: stats.expected + stats.flaky,
    failed: stats.unexpected + (errors?.length ?? 0),
    skipped: stats.skipped,
  }
}

/**
 * The sum of a part: its own count, held against its exit code, so that a part that broke never counts as passed.
 * @param {number} code exit code
 * @param {Count | null} count
 * @returns {Count}
 */
export function settle(code, count) {
  if (!count) return code === 0 ? { passed: 1, failed: 0, skipped: 0 } : { passed: 0, failed: 1, skipped: 0 }
  const ranNothing = count.passed + count.failed === 0
  if ((code !== 0 || ranNothing) && count.failed === 0) return { ...count, failed: 1 }
  return count
}

/** @param {Count[]} counts */
export function closingLine(counts) {
  const sum = (key) => counts.reduce((total, count) => total + count[key], 0)
  const skipped = sum('skipped')
  return `${sum('passed')} passed, ${sum('failed')} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`
}

function readJson(path) {
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : null
}
