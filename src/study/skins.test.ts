import { expect, it } from 'vitest'
import { sample } from '../../tests/support/sample'
import { keepSkins, PICTURE_TOLERANCE } from './skins'
import { study } from './study'

const plan = () => sample('thin-margins')

it('keeps the skin of a room that is the same, and makes that of one that moved anew', () => {
  const skins = keepSkins()
  const first = study(plan(), { withoutTime: true })
  const [before] = skins(first.obstacles.rooms, PICTURE_TOLERANCE.drag)
  const again = study(plan(), { withoutTime: true })
  expect(skins(again.obstacles.rooms, PICTURE_TOLERANCE.drag)[0]).toBe(before)
  const moved = plan()
  moved.lines[0]!.stanchions[1]!.station += 0.3048
  const [after] = skins(study(moved, { withoutTime: true }).obstacles.rooms, PICTURE_TOLERANCE.drag)
  expect(after).not.toBe(before)
  expect(after!.line).toBe(before!.line)
})

it('makes a coarse skin finer when it is asked for, not the other way round', () => {
  const skins = keepSkins()
  const { rooms } = study(plan(), { withoutTime: true }).obstacles
  const [coarse] = skins(rooms, PICTURE_TOLERANCE.drag)
  const [fine] = skins(rooms, PICTURE_TOLERANCE.rest)
  expect(fine!.indices.length).toBeGreaterThan(coarse!.indices.length)
  expect(skins(rooms, PICTURE_TOLERANCE.drag)[0]).toBe(fine)
})
