/** A person's hand, counted: each click, each key, each drag, each text typed in one go is one action. */
import { expect, type Locator, type Page } from '@playwright/test'

export interface Hand {
  press(key: string): Promise<void>
  type(text: string): Promise<void>
  /** The real mouse, on the middle of what is seen. */
  click(target: Locator | { x: number; y: number }): Promise<void>
  count(): number
}

export function hand(page: Page): Hand {
  let actions = 0
  return {
    press: async (key) => {
      actions++
      await page.keyboard.press(key)
    },
    type: async (text) => {
      actions++
      await page.keyboard.insertText(text)
    },
    click: async (target) => {
      actions++
      const at = 'x' in target ? target : await middleOf(target)
      await page.mouse.move(at.x, at.y, { steps: 3 })
      await page.mouse.click(at.x, at.y)
    },
    count: () => actions,
  }
}

/** Where it can be clicked, once it stands still. */
async function middleOf(target: Locator): Promise<{ x: number; y: number }> {
  await target.click({ trial: true })
  const box = await target.boundingBox()
  if (!box) throw new Error('There is nothing to click.')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

/** Finds a command or a thing by its words in the palette: three actions. */
export async function run(page: Page, h: Hand, words: string): Promise<void> {
  const search = page.getByPlaceholder('Find a command or a thing in the plan')
  await h.press('Control+k')
  await expect(search).toBeFocused()
  await h.type(words)
  await h.press('Enter')
  await expect(search).toBeHidden()
}
