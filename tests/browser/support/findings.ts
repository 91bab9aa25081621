import { expect, type Page } from '@playwright/test'
import type { Results } from '../../../src/study/results'

interface Studied {
  fallroom: {
    store: {
      getState(): { plan: unknown; study: { whole: boolean; ofPlan: unknown; results: Results | null } }
    }
  }
}

/** What fails in the whole study of the plan as it stands, as rule and subject; null while that is not done. */
export const failing = (page: Page): Promise<string[] | null> =>
  page.evaluate(() => {
    const { plan, study } = (window as unknown as Studied).fallroom.store.getState()
    if (!study.whole || study.ofPlan !== plan || !study.results) return null
    return study.results.findings.filter((f) => f.status === 'fail').map((f) => `${f.rule} ${f.subject}`)
  })

/** Waits for that study, then gives what fails. */
export async function settled(page: Page): Promise<string[]> {
  await expect.poll(() => failing(page), { timeout: 60_000 }).not.toBeNull()
  return (await failing(page)) ?? []
}
