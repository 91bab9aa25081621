import { expect, test } from './support/test'

interface Probe {
  frames: () => number
}

test('the scene rests: once nothing moves nothing is drawn', async ({ desk, page }) => {
  await desk.openSample('thin-margins.plan.json')
  await page.waitForFunction(() => {
    const { study } = (
      window as unknown as {
        fallroom: { store: { getState(): { study: { status: string; skins: unknown[] } } } }
      }
    ).fallroom.store.getState()
    return study.status === 'done' && study.skins.length > 0
  })
  await page.waitForFunction(() => document.querySelector('canvas')?.dataset.fine === 'true')
  const frames = (): Promise<number> =>
    page.evaluate(() => (window as unknown as { fallroom: Probe }).fallroom.frames())
  await expect
    .poll(async () => {
      const before = await frames()
      await page.evaluate(() => new Promise((done) => setTimeout(done, 700)))
      return (await frames()) - before
    })
    .toBe(0)
})
