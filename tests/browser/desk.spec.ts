import { expect, test } from './support/test'

test('the one-time address opens the window once', async ({ desk, page, browser }) => {
  await desk.openNothing(false)
  await expect(page).toHaveURL(/^http:\/\/127\.0\.0\.1:\d+\/$/)
  const stranger = await browser.newPage()
  const answer = await stranger.goto(page.url())
  expect(answer?.status()).toBe(403)
  await expect(stranger.locator('body')).toContainText('one window only')
  await stranger.close()
})
