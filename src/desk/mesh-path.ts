/**
 * The parts of a relative path that a plan names for a model, or null if it could lead out of the plan's folder: an
 * absolute path, a drive, a `..`, a device name of Windows, a NUL. Both kinds of slash count on every system, since a
 * plan travels.
 */
export function relativeParts(file: string): string[] | null {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is refused here
  if (file.length === 0 || file.length > 1024 || /[\u0000-\u001f]/.test(file)) return null
  if (/^[/\\]/.test(file) || file.includes(':')) return null
  const parts = file.split(/[/\\]/).filter((part) => part !== '' && part !== '.')
  return parts.length > 0 && parts.every(isPlainName) ? parts : null
}

function isPlainName(part: string): boolean {
  if (part === '..' || /[. ]$/.test(part)) return false
  return !/^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i.test(part)
}
