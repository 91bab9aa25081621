import { describe, expect, it } from 'vitest'
import { clipOf, readClip } from '../edits/clip'
import { emptyPlan } from '../empty-plan'
import { readGirderTable } from './girder-table'
import { readLoopTable } from './loop-table'

describe('girders as a table', () => {
  it('reads names and lengths as people type them', () => {
    const [row] = readGirderTable("North; 0; 0; 46 ft; 120'; 0; 46", 'us')
    expect(row).toMatchObject({ ok: true, name: 'North', start: [0, 0, 46 * 0.3048] })
    expect(row?.ok ? row.end[0] : null).toBeCloseTo(120 * 0.3048, 12)
  })
  it('passes a head over and keeps what else is good', () => {
    const rows = readGirderTable(
      'name\tx\ty\tz\tx\ty\tz\nA\t0\t0\t14\t30\t0\t14\nB\t0\t0\tx\t30\t0\t14',
      'si',
    )
    expect(rows.map((r) => r.ok)).toEqual([true, false])
    expect(rows[1]).toMatchObject({ line: 3 })
  })
  it.each(['hello', '1,2', '\u0000\u0001', 'A;0;0;0;0;0;0', '"'])('takes nothing from %j', (text) => {
    expect(readGirderTable(text, 'us').every((r) => !r.ok)).toBe(true)
  })
})

describe('loops as a table', () => {
  it('reads rows', () => {
    const { rows } = readLoopTable('first,spacing,count,offset\n0.1,0.3,134,0', 'si')
    expect(rows).toEqual([{ first: 0.1, spacing: 0.3, count: 134, offset: 0 }])
  })
  it('fits measured stations by even rows, and tells what stands alone', () => {
    const { rows, faults } = readLoopTable('0.10\n0.40\n0.71\n1.00\n9.00', 'si')
    expect(rows).toHaveLength(1)
    expect(rows[0]).toMatchObject({ first: 0.1, count: 4 })
    expect(rows[0]?.spacing).toBeCloseTo(0.3, 9)
    expect(faults.join()).toMatch(/9\.00 m stands alone/)
  })
  it('does not take loop numbers for stations, and a first column of stations not for numbers', () => {
    const counted = readLoopTable('loop,station\n1,2 ft\n2,3 ft\n3,4 ft', 'us')
    expect(counted.faults).toEqual([])
    expect(counted.rows).toEqual([{ first: 0.6096, spacing: expect.closeTo(0.3048, 9), count: 3, offset: 0 }])
    const beside = readLoopTable('1;0.2\n2;0.2\n3;0.2', 'si')
    expect(beside.rows).toEqual([{ first: 1, spacing: 1, count: 3, offset: 0.2 }])
  })
  it('tells loops before the girder and lines too many', () => {
    expect(readLoopTable('-5 m\n-4 m\n-3 m', 'si')).toMatchObject({ rows: [] })
    const long = Array.from({ length: 5003 }, (_, i) => `${i * 0.1}`).join('\n')
    expect(readLoopTable(long, 'si').faults.join()).toMatch(/5003 lines; only the first 5000/)
  })
  it('refuses what makes no row', () => {
    const { rows, faults } = readLoopTable('0.1,0,12\n-4,0.3,2.5', 'si')
    expect(rows).toEqual([])
    expect(faults).toHaveLength(2)
  })
})

describe('the clipboard', () => {
  it.each([
    '',
    'hello',
    '{"fallroom":"clip"',
    '{"fallroom":"clip","plan":{},"refs":[]}',
    '{"fallroom":"clip","plan":null,"refs":[{"id":"G1"}]}',
  ])('takes nothing from %j', (text) => {
    expect(readClip(text)).toBeNull()
  })
  it('copies nothing of nothing', () => expect(clipOf(emptyPlan(), [])).toBeNull())
})
