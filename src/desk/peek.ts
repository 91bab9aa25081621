/** The newest plan version that this program writes. */
const OWN_VERSION = 1

/**
 * Why a file with this text must not be written over, or null. Only a plan of a newer version is protected: what it
 * holds beyond our fields would be lost. Text that is no plan may be replaced by whoever chose it.
 */
export function whyNotOver(text: string): string | null {
  const version = planVersion(text)
  if (version === null || version <= OWN_VERSION) return null
  return `This plan was written by a newer Fallroom (plan version ${version}). This one writes version ${OWN_VERSION} and leaves it alone.`
}

function planVersion(text: string): number | null {
  try {
    const document: unknown = JSON.parse(text)
    if (typeof document !== 'object' || document === null) return null
    const { format, version } = document as Record<string, unknown>
    return format === 'fallroom-plan' && typeof version === 'number' ? version : null
  } catch {
    return null
  }
}
