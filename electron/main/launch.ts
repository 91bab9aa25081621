import { resolve } from 'node:path'

export interface Launch {
  plan: string | null
  sample: string | null
}

/** The program's own arguments. Where it runs from the project's folder, the first one that is no flag is that folder. */
export function ownArguments(argv: readonly string[], packaged: boolean): string[] {
  const rest = argv.slice(1)
  const folder = packaged ? -1 : rest.findIndex((arg) => !arg.startsWith('-'))
  return rest.filter((_, index) => index !== folder)
}

/**
 * What the command line asks to open, out of `ownArguments`. Flags of Electron and Chromium are passed over.
 */
export function readLaunch(args: readonly string[], folder: string): Launch {
  const sample = args.find((arg) => arg.startsWith('--sample='))?.slice('--sample='.length)
  const plan = args.find((arg) => arg !== '' && !arg.startsWith('-'))
  return { plan: plan ? resolve(folder, plan) : null, sample: sample ? resolve(folder, sample) : null }
}
