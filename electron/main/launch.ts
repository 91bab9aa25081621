import { resolve } from 'node:path'

/** The program's own arguments. Where it runs from the project's folder, the first one that is no flag is that folder. */
export function ownArguments(argv: readonly string[], packaged: boolean): string[] {
  const rest = argv.slice(1)
  const folder = packaged ? -1 : rest.findIndex((arg) => !arg.startsWith('-'))
  return rest.filter((_, index) => index !== folder)
}

/** The plan that the command line asks to open, out of `ownArguments`. Flags of Electron and Chromium are passed over. */
export function planAsked(args: readonly string[], folder: string): string | null {
  const plan = args.find((arg) => arg !== '' && !arg.startsWith('-'))
  return plan === undefined ? null : resolve(folder, plan)
}
