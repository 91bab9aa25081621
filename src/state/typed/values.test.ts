/** Typed places of everything that has a handle: what was typed reads back, in one entry; the rest is refused. */
import { beforeEach, describe, expect, it } from 'vitest'
import { sample } from '../../../tests/support/sample'
import { planHash } from '../../plan/hash'
import type { Plan } from '../../plan/types'
import { undo } from '../edit'
import { addDeck } from '../edits/obstacle-edits'
import type { Ref } from '../refs'
import { app, history } from '../store'
import { canType, typeBeside } from './typing'
import { typedValues } from './values'

const now = (): Plan => app.getState().plan
const tieBack: Ref = { kind: 'tie-back', id: 'T11' }
const post: Ref = { kind: 'stanchion', id: 'S12' }
const girder: Ref = { kind: 'girder', id: 'G1' }
let deck: Ref = girder

beforeEach(() => {
  const plan = sample('four-girder-bay')
  const square: [number, number][] = [
    [0, 20],
    [6, 20],
    [6, 24],
    [0, 24],
  ]
  deck = { kind: 'deck', id: addDeck(plan, square)! }
  app.setState({ plan, savedPlan: plan, units: 'si', selection: [], locked: [], typing: null })
  history().clear()
})

function figure(ref: Ref, label: string, point?: number) {
  const found = typedValues(now(), ref, point).find((v) => v.label === label)
  if (!found) throw new Error(`${ref.id} has no ${label}`)
  return found
}

describe('a typed figure', () => {
  const obstacle = (id: string): Ref => ({ kind: 'obstacle', id })
  const cases: [string, () => Ref, string, number, number?][] = [
    ['a stanchion', () => post, 'Station', 9.31],
    ['one foot', () => ({ ...tieBack, foot: 'tensioner' }), 'Tensioner on loop', 6],
    ['a tie-back', () => tieBack, 'Strap on loop', 5],
    ['a girder', () => girder, 'y', 12.34],
    ['the end of a girder', () => girder, 'elevation', 14.9, 1],
    ['a deck', () => deck, 'elevation', 15.25],
    ['the corner of a deck', () => deck, 'x', 7.125, 2],
    ['a box', () => obstacle('barge'), 'top', 2.95],
    ['a lane', () => obstacle('road-north'), 'x', 24.5],
  ]
  it.each(cases)('of %s reads back, and one undo takes it back', (_, ref, label, value, point) => {
    const before = planHash(now())
    expect(figure(ref(), label, point).value).not.toBeCloseTo(value, 3)
    expect(figure(ref(), label, point).take(value)).toBeNull()
    expect(figure(ref(), label, point).value).toBeCloseTo(value, 4)
    expect(history().pastStates).toHaveLength(1)
    undo()
    expect(planHash(now())).toBe(before)
  })

  it('of a whole thing moves all of it', () => {
    const at = (): number[] => now().girders.find((g) => g.id === girder.id)!.end
    const [x, y, z] = at() as [number, number, number]
    const before = figure(girder, 'y').value
    figure(girder, 'y').take(before + 1.5)
    expect(at()).toEqual([x, y + 1.5, z].map((v) => expect.closeTo(v, 4)))
  })
})

describe('what could not be', () => {
  const refused: [string, () => Ref, string, number, RegExp, number?][] = [
    ['a station past a neighbour', () => post, 'Station', 19, /S13 stands at/],
    ['a station off the girder', () => post, 'Station', -0.1, /runs from 0 to/],
    ['a loop that is not there', () => tieBack, 'Strap on loop', 500, /no such loop/],
    ['a girder without length', () => girder, 'x', 0.2, /too short/, 1],
    ['a deck across itself', () => deck, 'x', -3, /runs across/, 2],
  ]
  it.each(refused)('%s is refused with the word why', (_, ref, label, value, why, point) => {
    const before = now()
    expect(figure(ref(), label, point).take(value)).toMatch(why)
    expect(now()).toBe(before)
  })
})

describe('the figures beside a thing', () => {
  it('open for what has a handle and is not locked', () => {
    typeBeside(post)
    expect(app.getState().typing).toEqual({ ref: post, at: null })
    expect(canType(app.getState(), { kind: 'obstacle', id: 'river' })).toBe(false)
    app.setState({ typing: null, locked: [post.id] })
    typeBeside(post)
    expect(app.getState().typing).toBeNull()
  })
})
