import { expect, it } from 'vitest'
import type { Girder, Stanchion, TieBack } from '../plan/types'
import { tieBackLegs } from './tie-back'

/** One loop a metre from station 0 on, in rows 0.5 m to the left and to the right. */
const girder = {
  start: [0, 0, 0],
  end: [30, 0, 0],
  loops: [0.5, -0.5].map((offset, i) => ({ id: `R${i}`, first: 0, spacing: 1, count: 30, offset })),
} as unknown as Girder

const post = (station: number, offset = 0): Stanchion => ({ id: 'S', station, offset }) as Stanchion

const tie = (strap: number, tensioner: number): TieBack =>
  ({ strapLoop: { row: 'R0', index: strap }, tensionerLoop: { row: 'R1', index: tensioner } }) as TieBack

it('measures a leg as one does with a tape: 2 along, 0.5 across, 1.2 down', () => {
  const [strap, tensioner] = tieBackLegs(girder, post(5), 1.2, -1, tie(3, 2))
  expect(strap).toMatchObject({ which: 'strap', along: 2, across: 0.5, drop: 1.2 })
  expect(strap.length).toBeCloseTo(Math.sqrt(4 + 0.25 + 1.44), 12)
  expect(strap.angle).toBeCloseTo((Math.acos(1.2 / Math.sqrt(5.69)) * 180) / Math.PI, 10)
  expect(tensioner).toMatchObject({ which: 'tensioner', along: 3, across: 0.5 })
  expect(tieBackLegs(girder, post(5, 0.5), 1.2, -1, tie(3, 2)).map((l) => l.across)).toEqual([0, 1])
})

it('has a leg as far along as high at 45 degrees from the vertical', () => {
  const [leg] = tieBackLegs(girder, post(5, 0.5), 2, -1, tie(3, 3))
  expect(leg.angle).toBeCloseTo(45, 10)
})

it('knows the far side of the line at either end', () => {
  const sides = (station: number, away: 1 | -1, loop: number): boolean =>
    tieBackLegs(girder, post(station), 1.2, away, tie(loop, loop))[0].farSide
  // The line runs on to greater stations from its first stanchion: smaller ones lie on the far side.
  expect([sides(5, -1, 3), sides(5, -1, 7), sides(5, -1, 5)]).toEqual([true, false, false])
  // It ends at its last: greater ones do.
  expect([sides(20, 1, 22), sides(20, 1, 18), sides(20, 1, 20)]).toEqual([true, false, false])
})

it('has no loop and no far side where a reference names none', () => {
  const [leg] = tieBackLegs(girder, post(5), 1.2, -1, tie(99, 3))
  expect(leg).toMatchObject({
    loop: null,
    along: 0,
    across: 0,
    farSide: false,
    drop: 1.2,
    length: 1.2,
    angle: 0,
  })
})
