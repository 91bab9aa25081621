import { type ChildProcess, spawn } from 'node:child_process'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { builtDesktop, builtWindow } from '../../../scripts/lib/build.mjs'

/** A loopback host in a process of its own, so that it can be killed as a machine would kill it. */
export interface KillableHost {
  address: string
  kill(): Promise<void>
}

export async function startKillable(plan: string, home: string): Promise<KillableHost> {
  const loopback = pathToFileURL(join(builtDesktop, 'loopback.js')).href
  const options = JSON.stringify({ built: builtWindow, plan, home })
  const program = `const { startLoopback } = await import('${loopback}'); console.log((await startLoopback(${options})).address)`
  const child = spawn(process.execPath, ['--input-type=module', '-e', program], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  return { address: await firstLine(child), kill: () => kill(child) }
}

function firstLine(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    child.stdout?.once('data', (data) => resolve(String(data).trim()))
    child.once('exit', () => reject(new Error('The host ended before it said its address.')))
  })
}

function kill(child: ChildProcess): Promise<void> {
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  child.kill('SIGKILL')
  return ended
}
