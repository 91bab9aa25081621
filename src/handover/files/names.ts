/** Names of files that any disk takes, from names in any script. */

const MOST = 60
const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/i

/** Letters and digits of any script stay; the rest becomes one dash. Never empty, never a reserved name. */
export function fileName(text: string): string {
  const tidy = text
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}\p{M}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
  const cut = [...tidy].slice(0, MOST).join('').replace(/-+$/, '')
  if (cut === '') return 'plan'
  return reserved.test(cut) ? `${cut}-file` : cut
}

/** Names made different by a number where two would be the same on a disk that does not tell case apart. */
export function distinctNames(names: readonly string[]): string[] {
  const taken = new Set<string>()
  return names.map((name) => {
    let candidate = name
    for (let i = 2; taken.has(candidate.toLowerCase()); i++) candidate = `${name}-${i}`
    taken.add(candidate.toLowerCase())
    return candidate
  })
}
