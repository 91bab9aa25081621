import { type ParseArgsConfig, parseArgs } from 'node:util'
import { failed, type Tried } from './plan-file'

type Options = NonNullable<ParseArgsConfig['options']>

/** What stood on the command line: values of options, and what stood without one. */
export type Given<O extends Options> = ReturnType<
  typeof parseArgs<{ args: string[]; allowPositionals: true; options: O }>
>

/**
 * Reads a verb's arguments; `understand` says what they ask for. Null where the help is asked for, which every verb has;
 * an option that nobody knows comes back as words.
 */
export function readArguments<O extends Options, T>(
  args: string[],
  options: O,
  understand: (given: Given<O>) => Tried<T>,
): Tried<T | null> {
  try {
    const withHelp = { ...options, help: { type: 'boolean', short: 'h' } } as const
    const given = parseArgs({ args, allowPositionals: true, options: withHelp })
    const { help } = given.values as { help?: boolean }
    return help ? { ok: true, value: null } : understand(given as unknown as Given<O>)
  } catch (error) {
    return failed(`${(error as Error).message.split('. ')[0]}. --help tells how.`)
  }
}
