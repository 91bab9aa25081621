/** What every headless verb has in common: help, faults on standard error, and the exit status. */
import { failed, type Tried } from './plan-file'

/**
 * Runs a verb and gives its exit status: what `work` says, 0 for the help (asked for by a `wanted` of null), 2 where the
 * words or the input could not be read. A fault that nobody foresaw is told the same way.
 */
export async function runVerb<W>(
  help: string,
  wanted: Tried<W | null>,
  work: (want: W) => Promise<Tried<number>> | Tried<number>,
): Promise<number> {
  if (wanted.ok && wanted.value === null) {
    process.stdout.write(help)
    return 0
  }
  const done = wanted.ok ? await attempt(() => work(wanted.value as W)) : wanted
  if (done.ok) return done.value
  for (const line of done.lines) process.stderr.write(`${line}\n`)
  return 2
}

async function attempt(work: () => Promise<Tried<number>> | Tried<number>): Promise<Tried<number>> {
  try {
    return await work()
  } catch (error) {
    return failed(error instanceof Error ? error.message : String(error))
  }
}
