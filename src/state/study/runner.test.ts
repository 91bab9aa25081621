// @vitest-environment happy-dom
import * as Comlink from 'comlink'
import { expect, it } from 'vitest'
import { emptyPlan } from '../empty-plan'
import { createRunner } from './runner'

/** A worker whose studies end when the test says so. */
function slowWorker() {
  const { port1, port2 } = new MessageChannel()
  const ends: (() => void)[] = []
  const api = {
    run: () => new Promise((resolve) => ends.push(() => resolve({ results: { lines: [] }, details: [] }))),
    skins: () => [],
    stop: () => undefined,
    keepModel: () => undefined,
  }
  Comlink.expose(api, port2)
  const worker = Object.assign(port1, {
    terminate: () => {
      port1.close()
      port2.close()
    },
  })
  return { worker: worker as unknown as Worker, ends }
}

const until = (holds: () => boolean) => expect.poll(holds).toBe(true)

it('a plan that is being studied is not studied twice, unless something beside it has changed', async () => {
  const { worker, ends } = slowWorker()
  let done = 0
  const told = (outcome: { kind: string }): void => {
    if (outcome.kind === 'done') done++
  }
  const runner = createRunner(
    () => ({ withoutTime: true }),
    told,
    () => undefined,
    false,
    () => worker,
  )
  const plan = emptyPlan()
  runner.want(plan)
  await until(() => ends.length === 1)
  runner.want(plan)
  // A model was read while the study ran without it.
  runner.want(plan, true)
  ends[0]?.()
  await until(() => ends.length === 2)
  ends[1]?.()
  await until(() => done === 2)
  expect(ends).toHaveLength(2)
  runner.close()
})
