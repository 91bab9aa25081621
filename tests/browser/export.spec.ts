/** What leaves Fall and Teach as files: pictures, video and plots, each opened again by something else than its maker. */
import type { Download, Page } from '@playwright/test'
import { unzipSync } from 'fflate'
import { expect, test } from './support/test'

test.use({ viewport: { width: 1280, height: 800 } })

async function bytesOf(download: Promise<Download>): Promise<Uint8Array> {
  const stream = await (await download).createReadStream()
  const chunks: Buffer[] = []
  for await (const chunk of stream) chunks.push(chunk as Buffer)
  return new Uint8Array(Buffer.concat(chunks))
}

/** Size of a PNG from its header (ISO/IEC 15948: width and height at bytes 16 and 20). */
const pngSize = (png: Uint8Array): [number, number] => {
  const view = new DataView(png.buffer, png.byteOffset)
  expect([...png.subarray(0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47])
  return [view.getUint32(16), view.getUint32(20)]
}

async function dropped(page: Page): Promise<void> {
  await page.getByRole('tab', { name: 'Fall' }).click()
  await page.getByRole('button', { name: 'Drop', exact: true }).click()
  await expect(page.getByTestId('fall-time')).toBeVisible({ timeout: 60_000 })
}

test('a fall leaves as pictures, and as a video that plays for four times as long as the fall', async ({
  desk,
  page,
}) => {
  test.slow()
  await desk.openSample('thin-margins.plan.json')
  await dropped(page)
  const lasts = Number(await page.getByLabel('Time of the fall').getAttribute('max'))
  const begins = Number(await page.getByLabel('Time of the fall').getAttribute('min'))

  const zip = page.waitForEvent('download', { timeout: 120_000 })
  await page.getByRole('button', { name: 'Export', exact: true }).click()
  await page.getByRole('menuitem', { name: /Pictures/ }).click()
  const pictures = Object.entries(unzipSync(await bytesOf(zip)))
  expect(pictures.length).toBe(Math.floor((lasts - begins) / 0.03) + 2)
  for (const [, png] of pictures) expect(pngSize(png)[0]).toBeGreaterThan(400)
  // What falls moves: the pictures differ.
  const kinds = new Set(pictures.map(([, png]) => Buffer.from(png).toString('base64')))
  expect(kinds.size).toBeGreaterThan(pictures.length / 2)

  const film = page.waitForEvent('download', { timeout: 120_000 })
  await page.getByRole('button', { name: 'Export', exact: true }).click()
  await page.getByRole('menuitem', { name: /Video/ }).click()
  const video = await bytesOf(film)
  // The window's own policy plays no media: another page opens the file.
  const other = await page.context().newPage()
  const played = await other.evaluate(play, [...video])
  await other.close()
  expect(played.width).toBeGreaterThan(400)
  expect(Math.abs(played.seconds - (lasts - begins) * 4)).toBeLessThan(1)
})

test('plots of a fall and of a lesson leave as SVG and PNG', async ({ desk, page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await desk.openSample('thin-margins.plan.json')
  await dropped(page)
  await stands(page)
  await page.getByRole('button', { name: 'larger, and export' }).first().click()
  const svg = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Export SVG' }).click()
  expectDrawing(await page.evaluate(readSvg, new TextDecoder().decode(await bytesOf(svg))))
  const png = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Export PNG' }).click()
  expect(pngSize(await bytesOf(png))).toEqual([1920, 1080])
  await page.keyboard.press('Escape')

  await page.getByRole('tab', { name: 'Teach' }).click()
  await page.getByLabel('Figures of').selectOption('example')
  for (const lesson of ['Tie-back', 'Sag', 'Pretension', 'Lanyard']) {
    await page.getByRole('tab', { name: lesson }).click()
    await expect(page.getByTestId('lesson-plot')).toBeVisible({ timeout: 60_000 })
    const file = page.waitForEvent('download')
    await page.getByTestId('lesson').getByRole('button', { name: 'Export' }).click()
    await page.getByRole('menuitem', { name: 'Plot as SVG' }).click()
    expectDrawing(await page.evaluate(readSvg, new TextDecoder().decode(await bytesOf(file))))
  }
})

test('what a trainer has moved stays when another view is looked at between', async ({ desk, page }) => {
  await desk.openSample('thin-margins.plan.json')
  await page.getByRole('tab', { name: 'Teach' }).click()
  await page.getByRole('tab', { name: 'Sag' }).click()
  const grip = page.getByTestId('grip')
  await grip.press('ArrowUp')
  const angle = page.locator('dd[data-figure="Angle from the horizontal"]')
  const before = await angle.getAttribute('data-value')
  await page.getByRole('tab', { name: 'Rig' }).click()
  await page.getByRole('tab', { name: 'Teach' }).click()
  await expect(angle).toHaveAttribute('data-value', before!)
})

/** For who asked for less motion: the fall is shown at its lowest and does not play, nothing glides. */
async function stands(page: Page): Promise<void> {
  await expect(page.getByRole('button', { name: 'Play', exact: true })).toBeVisible()
  const time = await page.getByTestId('fall-time').textContent()
  await page.getByRole('button', { name: 'To the lowest point' }).click()
  await expect(page.getByTestId('fall-time')).toHaveText(time!)
  const glides = await page.evaluate(
    () =>
      [...document.querySelectorAll('*')].filter((e) => {
        const { transitionDuration, animationDuration } = getComputedStyle(e)
        return /[1-9]/.test(transitionDuration + animationDuration)
      }).length,
  )
  expect(glides).toBe(0)
  // The camera jumps: two frames on, the same point stands where it will stay.
  const at = await page.evaluate(async () => {
    const { store, project } = window.fallroom as unknown as Hook
    const frame = () => new Promise((done) => requestAnimationFrame(done))
    store.setState({ camera: { n: store.getState().camera.n + 1, to: 'home' } })
    const seen: string[] = []
    for (let i = 0; i < 40; i++) {
      await frame()
      const { x, y } = project([0, 0, 10]) ?? { x: 0, y: 0 }
      seen.push(`${Math.round(x)} ${Math.round(y)}`)
    }
    return [...new Set(seen)]
  })
  expect(at.length, at.join(', ')).toBeLessThanOrEqual(2)
}

interface Hook {
  store: {
    getState(): { camera: { n: number } }
    setState(part: { camera: { n: number; to: string } }): void
  }
  project(at: [number, number, number]): { x: number; y: number } | null
}

/** Opens a video and looks for its end: one that was recorded knows its length only then. */
async function play(data: number[]): Promise<{ width: number; seconds: number }> {
  const element = document.createElement('video')
  element.src = URL.createObjectURL(new Blob([new Uint8Array(data)], { type: 'video/webm' }))
  await new Promise((done, fail) => {
    element.onloadedmetadata = done
    element.onerror = () => fail(new Error('the video does not open'))
  })
  element.currentTime = 1e6
  await new Promise((done) => {
    element.onseeked = done
  })
  return { width: element.videoWidth, seconds: element.currentTime }
}

/** Read by the browser's own parser: lines that are drawn and words that say what they are. */
function readSvg(text: string): { fault: boolean; paths: number; words: string } {
  const parsed = new DOMParser().parseFromString(text, 'image/svg+xml')
  return {
    fault: parsed.querySelector('parsererror') !== null,
    paths: parsed.querySelectorAll('path, line, polyline').length,
    words: parsed.documentElement.textContent ?? '',
  }
}

function expectDrawing(read: { fault: boolean; paths: number; words: string }): void {
  expect(read.fault).toBe(false)
  expect(read.paths).toBeGreaterThan(5)
  // Every axis names its unit.
  expect(read.words).toMatch(/lbf|ft|kN|degrees|°|\bs\b/)
}
