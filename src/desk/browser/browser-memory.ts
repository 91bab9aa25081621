import type { Memory } from '../bridge'

/** The window's own storage. It may be forbidden or full; then nothing is remembered, and nothing breaks. */
export const browserMemory: Memory = {
  get: (key) => {
    try {
      return localStorage.getItem(`fallroom.${key}`)
    } catch {
      return null
    }
  },
  set: (key, value) => {
    try {
      localStorage.setItem(`fallroom.${key}`, value)
    } catch {
      // Only a preference is lost.
    }
  },
}
