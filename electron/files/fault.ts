import { type DeskCode, refused } from '../../src/desk/bridge'

interface Wording {
  code: DeskCode
  words: (name: string) => string
}

const full: Wording = {
  code: 'disk-full',
  words: (name) =>
    `The disk is full, so ${name} was not written. Nothing was changed. Free some space or save it somewhere else.`,
}
const locked: Wording = {
  code: 'read-only',
  words: (name) =>
    `${name} cannot be written: there is no permission to write there. Save it somewhere else.`,
}
const missing: Wording = {
  code: 'missing',
  words: (name) => `${name} is not there any more, or its folder is gone.`,
}
const notAFile: Wording = { code: 'not-a-file', words: (name) => `${name} is a folder, not a file.` }

const wordings: Record<string, Wording> = {
  ENOSPC: full,
  EDQUOT: full,
  EACCES: locked,
  EPERM: locked,
  EROFS: {
    code: 'read-only',
    words: (name) => `${name} lies on a disk that is read-only. Save it somewhere else.`,
  },
  ENOENT: missing,
  ENOTDIR: missing,
  EISDIR: notAFile,
  EBUSY: {
    code: 'failed',
    words: (name) => `${name} is held open by another program. Close it there and try again.`,
  },
}

/** An error of the file system in words for the person. `name` is what they call the file. */
export function fileFault(error: unknown, name: string) {
  const number = (error as NodeJS.ErrnoException | null)?.code ?? ''
  const known = wordings[number]
  if (known) return refused(known.code, known.words(name))
  return refused(
    'failed',
    `${name} could not be read or written${number ? ` (${number})` : ''}. Nothing was changed.`,
  )
}
