import { describe, expect, test } from 'vitest'
import { tellingUntilDone } from './worker-progress'

describe('the progress of work in a worker', () => {
  test('is heard while the work is under way, and what arrives after the result is not', async () => {
    const heard: number[] = []
    let late = (_: number): void => {}
    const made = await tellingUntilDone(
      (share: number) => heard.push(share),
      async (told) => {
        told(0.5)
        late = told
        return 'made'
      },
    )
    late(1)
    expect(made).toBe('made')
    expect(heard).toEqual([0.5])
  })

  test('is not heard after the work has failed', async () => {
    const heard: number[] = []
    let late = (_: number): void => {}
    const work = tellingUntilDone(
      (share: number) => heard.push(share),
      (told) => {
        late = told
        return Promise.reject(new Error('broken'))
      },
    )
    await expect(work).rejects.toThrow('broken')
    late(1)
    expect(heard).toEqual([])
  })
})
