import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { KEPT_WHOLE, place } from '../../../src/scene/labels/spread'

const size = { width: 800, height: 600 }

describe('labels', () => {
  it('never cover one another', () => {
    const wanted = fc.array(
      fc.record({
        rank: fc.integer({ min: 0, max: 100 }),
        x: fc.integer({ min: -100, max: 900 }),
        y: fc.integer({ min: -100, max: 700 }),
      }),
      { maxLength: 40 },
    )
    fc.assert(
      fc.property(wanted, (list) => {
        const kept = place(
          list.map(({ rank, x, y }, seat) => ({ seat, rank, box: { x, y, width: 90, height: 18 } })),
          size,
        )
        const boxes = [...kept.values()]
        boxes.forEach((a, i) => {
          for (const b of boxes.slice(i + 1)) {
            const apart = Math.abs(a.x - b.x) >= 90 || Math.abs(a.y - b.y) >= 18
            expect(apart).toBe(true)
          }
        })
      }),
      { verbose: 1 },
    )
  })

  it('let the more important stand', () => {
    const box = { x: 100, y: 100, width: 50, height: 20 }
    const kept = place(
      [
        { seat: 'name', rank: 10, box },
        { seat: 'clash', rank: 90, box },
      ],
      size,
    )
    expect([...kept.keys()]).toEqual(['clash'])
  })

  it('are pushed in from the edge when they matter, and left out when they do not', () => {
    const box = { x: -20, y: 100, width: 50, height: 20 }
    const important = place([{ seat: 'value', rank: KEPT_WHOLE, box }], size)
    expect(important.get('value')!.x).toBeGreaterThanOrEqual(0)
    const off = place([{ seat: 'name', rank: 10, box: { ...box, x: -60 } }], size)
    expect(off.size).toBe(0)
  })
})
