/** The samples that come with the program. */
import { mayLeave, openText } from './document'

/** The finished bay that a newcomer meets first. */
export async function openSample(): Promise<void> {
  if (await mayLeave()) await showSample()
}

export async function showSample(): Promise<boolean> {
  const text = (await import('../../../samples/four-girder-bay.plan.json?raw')).default
  return openText(text, { name: 'four-girder-bay.plan.json', sample: true })
}
