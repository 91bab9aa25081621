import { describe, expect, it } from 'vitest'
import { planHash } from '../../src/plan/hash'
import { lineState } from '../../src/plan/records/line-state'
import {
  approvalState,
  keepsRecords,
  recordId,
  rescuePlanGaps,
  rescuePlanOf,
  withRecord,
} from '../../src/plan/records/log'
import { momentOf } from '../../src/plan/records/moment'
import type { Plan, PlanRecord } from '../../src/plan/types'
import { sample } from './plan-support'

const NOW = '2031-05-20T12:00:00Z'
const by = 'Inspector of the example'

let n = 0
const common = (at: string) => ({ id: `X${++n}`, at, by, line: 'L1' })
const inspection = (at: string, ...results: ('pass' | 'fail' | 'n/a')[]): PlanRecord => ({
  ...common(at),
  kind: 'inspection',
  items: results.map((result, i) => ({ id: `item-${i}`, result })),
})
const daily = (at: string, passed: boolean): PlanRecord => ({
  ...common(at),
  kind: 'daily',
  tension: 4450,
  passed,
})
const service = (at: string, kind: 'out-of-service' | 'in-service' | 'retired'): PlanRecord => ({
  ...common(at),
  kind,
  reason: 'a strap is cut',
})

const stateOf = (...records: PlanRecord[]) => lineState({ ...sample(), records }, 'L1', NOW)

describe('the state of a line', () => {
  it('is not inspected before an inspection in which something passed', () => {
    expect(stateOf().service).toBe('not-inspected')
    expect(stateOf(inspection('2031-05-20T07:00:00Z')).service).toBe('not-inspected')
    expect(stateOf(daily('2031-05-20T07:00:00Z', true)).service).toBe('not-inspected')
    expect(stateOf(inspection('2031-05-20T07:00:00Z', 'pass', 'n/a')).service).toBe('in-service')
  })

  it('has its next daily check due a day after the last look', () => {
    const fresh = stateOf(inspection('2031-05-19T14:00:00+02:00', 'pass'))
    expect(fresh).toMatchObject({ nextDailyDue: '2031-05-20T12:00:00.000Z', overdue: false })
    const late = stateOf(inspection('2031-05-19T11:59:00Z', 'pass'))
    expect(late.overdue).toBe(true)
    const looked = stateOf(inspection('2031-05-18T07:00:00Z', 'pass'), daily('2031-05-20T07:00:00Z', true))
    expect(looked).toMatchObject({ nextDailyDue: '2031-05-21T07:00:00.000Z', overdue: false })
  })

  it('is out of service after a look that failed, until an inspection passes', () => {
    const good = inspection('2031-05-18T07:00:00Z', 'pass')
    const failed = stateOf(good, daily('2031-05-19T07:00:00Z', false))
    expect(failed).toMatchObject({ service: 'out-of-service', nextDailyDue: null, overdue: false })
    expect(failed.reason).toMatch(/daily check of 2031-05-19/)
    const still = stateOf(good, daily('2031-05-19T07:00:00Z', false), daily('2031-05-19T09:00:00Z', true))
    expect(still.service).toBe('out-of-service')
    const back = stateOf(
      good,
      daily('2031-05-19T07:00:00Z', false),
      inspection('2031-05-20T07:00:00Z', 'pass'),
    )
    expect(back.service).toBe('in-service')
    expect(stateOf(inspection('2031-05-18', 'pass', 'fail')).reason).toMatch(/inspection of 2031-05-18/)
  })

  it('is put back only by a person where a person took it out, and never from retirement', () => {
    const taken = service('2031-05-19T07:00:00Z', 'out-of-service')
    expect(stateOf(taken, inspection('2031-05-19T08:00:00Z', 'pass')).service).toBe('out-of-service')
    expect(stateOf(taken).reason).toBe('a strap is cut')
    expect(stateOf(taken, service('2031-05-20T07:00:00Z', 'in-service')).service).toBe('in-service')
    const retired = service('2031-05-19T07:00:00Z', 'retired')
    expect(stateOf(retired, service('2031-05-20T07:00:00Z', 'in-service')).service).toBe('retired')
  })

  it('does not mix lines', () => {
    const other = { ...inspection('2031-05-20', 'pass'), line: 'L2' } as PlanRecord
    expect(stateOf(other)).toMatchObject({ service: 'not-inspected', lastInspection: null })
  })
})

describe('an approval', () => {
  const approve = (plan: Plan): Plan =>
    withRecord(plan, { kind: 'approval', id: recordId(plan), at: NOW, by, planHash: planHash(plan) })

  it('stands for exactly what was approved', () => {
    const plan = sample()
    expect(approvalState(plan, planHash(plan)).status).toBe('none')
    const approved = approve(plan)
    expect(approvalState(approved, planHash(approved)).status).toBe('current')
    const moved = structuredClone(approved)
    moved.lines[0]!.stanchions[1]!.station += 0.3048
    expect(approvalState(moved, planHash(moved))).toMatchObject({ status: 'stale', record: { by } })
    const noted = withRecord(approved, daily(NOW, true))
    expect(approvalState(noted, planHash(noted)).status).toBe('current')
    const undone = { ...structuredClone(moved), lines: structuredClone(approved.lines) }
    expect(approvalState(undone, planHash(undone)).status).toBe('current')
  })
})

describe('the log', () => {
  it('is only ever added to', () => {
    const plan = sample()
    const more = withRecord(plan, daily(NOW, true))
    expect(keepsRecords(plan, more)).toBe(true)
    expect(keepsRecords(more, plan)).toBe(false)
    const edited = structuredClone(more)
    edited.records![0]!.by = 'somebody else'
    expect(keepsRecords(more, edited)).toBe(false)
    expect(recordId(more)).not.toBe(more.records![0]!.id)
  })

  it('gives the rescue plan and what it lacks', () => {
    const plan = sample()
    expect(rescuePlanGaps(rescuePlanOf(plan, 'L1'))).toEqual([])
    expect(rescuePlanGaps(rescuePlanOf(plan, 'L2'))).toEqual(['no rescue plan is recorded'])
    const empty = { ...rescuePlanOf(plan, 'L1')!, method: ' ', gear: '', people: 0, minutes: 0 }
    expect(rescuePlanGaps(empty)).toHaveLength(4)
  })

  it('reads a time without a zone as UTC, wherever the program runs', () => {
    expect(momentOf('2031-05-20')).toBe(Date.UTC(2031, 4, 20))
    expect(momentOf('2031-05-20T07:00')).toBe(Date.UTC(2031, 4, 20, 7))
    expect(momentOf('2031-05-20T07:00:00-05:00')).toBe(Date.UTC(2031, 4, 20, 12))
    expect(momentOf('soon')).toBeNaN()
  })
})
