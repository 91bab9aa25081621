/** Small preferences of this machine. Storage may be forbidden or full; then nothing is remembered, and nothing breaks. */
type Preference = 'theme' | 'units' | 'hint' | 'parts' | 'clipboard' | 'lastParts'

export function remember(key: Preference, value: string): void {
  try {
    window.localStorage.setItem(`fallroom.${key}`, value)
  } catch {
    // Only a preference is lost.
  }
}

export function recall(key: Preference): string | null {
  try {
    return window.localStorage.getItem(`fallroom.${key}`)
  } catch {
    return null
  }
}
