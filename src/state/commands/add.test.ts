import { expect, it } from 'vitest'
import { addGirder } from '../edits/girder-edits'
import { addObstacle } from '../edits/obstacle-edits'
import { emptyPlan } from '../empty-plan'
import { app, history } from '../store'
import { addAndSelect } from './add'

it('adds as one entry and selects; what no plan could hold is told and not added', () => {
  const plan = emptyPlan('si')
  app.setState({ plan, savedPlan: plan, selection: [], notice: null })
  history().clear()
  const id = addAndSelect('girder', 'add a girder', (p) => addGirder(p, [0, 0, 10], [30, 0, 10]))
  expect(app.getState().selection).toEqual([{ kind: 'girder', id }])
  expect(history().pastStates).toHaveLength(1)

  const held = app.getState().plan
  expect(
    addAndSelect('obstacle', 'add a model', (p) =>
      addObstacle(p, { kind: 'mesh', file: 'far.obj', at: [1e9, 0, 0] }),
    ),
  ).toBeNull()
  expect(app.getState().plan).toBe(held)
  expect(history().pastStates).toHaveLength(1)
  expect(app.getState().notice?.text).toBe(
    'It was not possible to add a model: must be 100,000,000 or less, is 1000000000.',
  )
})
