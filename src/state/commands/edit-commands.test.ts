import { afterEach, expect, it } from 'vitest'
import { sample } from '../../../tests/support/sample'
import type { Obstacle } from '../../plan/types'
import { app } from '../store'
import { canRun } from './command'
import { editCommands } from './edit-commands'

const before = app.getState()
afterEach(() => app.setState(before))

it.each<[Obstacle['kind'], boolean]>([
  ['water', false],
  ['lane', true],
  ['box', true],
])('offers turning only of what has a place of its own: %s', (kind, turns) => {
  const plan = sample('four-girder-bay')
  const id = plan.obstacles.find((o) => o.kind === kind)!.id
  app.setState({ plan, selection: [{ kind: 'obstacle', id }] })
  const turn = editCommands.filter((c) => c.id.startsWith('edit.turn'))
  expect(turn.map((c) => canRun(c, app.getState()))).toEqual([turns, turns])
})
