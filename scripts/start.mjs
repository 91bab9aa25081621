/**
 * npm start [-- PLAN]: opens the window on a plan. In Electron where its executable is there, otherwise in an installed
 * Chromium-family browser, otherwise it prints the findings and the address to open. Downloads nothing.
 */
import { spawn } from 'node:child_process'
import { existsSync, readdirSync, statSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { parseArgs } from 'node:util'
import { appWindowFlags, findBrowser, hasDisplay, isRoot } from './lib/browsers.mjs'
import { buildFault, buildIfStale, builtDesktop, builtWindow, root } from './lib/build.mjs'
import { findElectron } from './lib/electron.mjs'

const help = `npm start [-- PLAN] [-- --no-window]

  PLAN         the plan file to open; without it a sample is opened
  --no-window  only serve: print the findings and the address to open in a browser
`

const { values, positionals } = readArguments()
const named =
  positionals[0] === undefined ? null : resolve(process.env.INIT_CWD ?? process.cwd(), positionals[0])
if (named) checkPlan(named)

await prepare()
const electron = values['no-window'] || !hasDisplay() ? null : findElectron(root)
if (!electron || !(await openInElectron(electron))) await openOnLoopback()

function readArguments() {
  try {
    const options = { help: { type: 'boolean' }, 'no-window': { type: 'boolean' } }
    const parsed = parseArgs({ options, allowPositionals: true })
    if (parsed.values.help) leave(0, help)
    return parsed
  } catch (error) {
    return leave(2, `${error.message.split('. ')[0]}.\n\n${help}`)
  }
}

function checkPlan(path) {
  if (!existsSync(path)) leave(2, `There is no file ${path}.`)
  if (!statSync(path).isFile()) leave(2, `${path} is a folder, not a plan file.`)
}

/** The bay is what the window shows where no plan was named. */
function samplePlan() {
  const folder = join(root, 'samples')
  const plans = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.json')) : []
  const chosen = plans.find((name) => name.includes('bay')) ?? plans[0]
  return chosen ? join(folder, chosen) : null
}

async function prepare() {
  if (!existsSync(join(root, 'node_modules', 'vite'))) leave(2, 'Run npm install first.')
  try {
    await buildIfStale({ onBuild: () => console.log('The sources changed, so the window is built first.') })
  } catch (error) {
    if (!existsSync(join(builtWindow, 'index.html')))
      leave(2, `The window could not be built: ${buildFault(error)}`)
    console.error(`The window could not be built anew, so the last build is opened: ${buildFault(error)}`)
  }
}

/** True if Electron opened; its window then lives on its own and this waits for its end. */
function openInElectron(executable) {
  const flags = isRoot() && process.platform === 'linux' ? ['--no-sandbox'] : []
  const started = Date.now()
  return new Promise((settle) => {
    const child = spawn(executable, [...flags, root, ...(named ? [named] : [])], { stdio: 'inherit' })
    child.on('error', () => settle(false))
    child.on('exit', (code) => settle(code === 0 || Date.now() - started > 5000))
  })
}

async function openOnLoopback() {
  const { startLoopback } = await import(pathToFileURL(join(builtDesktop, 'loopback.js')).href)
  const host = await startLoopback({ built: builtWindow, ...(named ? { plan: named } : {}) })
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => host.stop())
  const browser = values['no-window'] || !hasDisplay() ? null : findBrowser()
  const child = browser ? openInBrowser(browser, host.address, join(host.home, 'browser')) : null
  if (!child) await tellInTerminal(host.address)
  await host.stopped
  child?.kill()
  process.exit(0)
}

function openInBrowser(executable, address, profile) {
  const child = spawn(executable, appWindowFlags(address, profile), { stdio: 'ignore' })
  child.on('error', () => tellInTerminal(address))
  console.log('Fallroom is open in a window of its own. Close that window to stop.')
  return child
}

async function tellInTerminal(address) {
  const plan = named ?? samplePlan()
  if (plan) await printFindings(plan)
  if (!values['no-window'])
    console.log(
      '\nNo window could be opened here: neither Electron nor a Chromium-family browser with a display was found.',
    )
  console.log(
    `\nOpen this address in a browser on this machine (it works once):\n\n  ${address}\n\nCtrl+C stops.`,
  )
}

function printFindings(plan) {
  const args = ['--import', 'tsx', join(root, 'src', 'cli', 'check.ts'), plan]
  return new Promise((settle) => {
    const child = spawn(process.execPath, args, { stdio: 'inherit', cwd: root })
    child.on('error', settle)
    child.on('exit', settle)
  })
}

function leave(code, words) {
  ;(code === 0 ? console.log : console.error)(words)
  process.exit(code)
}
