import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../plan/types'
import { diagnosticText } from './diagnostics'

const sample = new URL('../../samples/four-girder-bay.plan.json', import.meta.url)
const bay: Plan = JSON.parse(readFileSync(sample, 'utf8'))
const facts = { kind: 'loopback', savesInPlace: true, version: '0.1.0', platform: 'x', runtime: 'y' } as const

function named(): Plan {
  const plan = structuredClone(bay)
  plan.title = 'Quellbach crossing'
  plan.site = 'Quellbach'
  plan.workers = plan.workers.map((worker, n) => ({
    ...worker,
    id: `worker-anna-${n}`,
    name: 'Anna Beispiel',
  }))
  plan.records = [
    { id: 'r1', kind: 'approval', at: '2030-01-01', by: 'Dora Muster', planHash: 'ab', note: 'Seen by Dora' },
    {
      id: 'r2',
      kind: 'as-built',
      at: '2030-01-01',
      by: 'Dora Muster',
      line: plan.lines[0]?.id ?? '',
      stations: {},
      tension: 1,
    },
  ]
  return plan
}

const input = {
  facts,
  at: '2030-01-01T00:00:00Z',
  results: {
    plan: 'Quellbach crossing',
    findings: [{ subject: 'worker-anna-0', text: 'Anna Beispiel hits', value: 1.25 }],
  },
  errors: [
    'TypeError: no Anna Beispiel at http://127.0.0.1:1/assets/index-abc.js:1:2',
    'in /home/dora/job/plan.json',
  ],
}

describe('the diagnostic file', () => {
  it('holds everything where the person wants that', () => {
    const told = JSON.parse(diagnosticText({ ...input, plan: named() }, true))
    expect(told).toMatchObject({ format: 'fallroom-diagnostic', version: 1, names: true, facts })
    expect(told.plan).toEqual(named())
  })

  it('holds no name, no place and no path otherwise', () => {
    const text = diagnosticText({ ...input, plan: named() }, false)
    for (const name of [
      'Quellbach',
      'Anna',
      'anna',
      'Dora',
      'dora',
      '/home',
      '127.0.0.1',
      bay.girders[0]?.name ?? '-',
    ]) {
      expect(text).not.toContain(name)
    }
    expect(text).toContain('index-abc.js')
  })

  it('keeps the figures and what refers to what', () => {
    const plan = named()
    const told = JSON.parse(diagnosticText({ ...input, plan }, false))
    expect(told.plan.girders[0].start).toEqual(plan.girders[0]?.start)
    expect(told.plan.lines[0].pretension).toBe(plan.lines[0]?.pretension)
    expect(told.plan.workers[0].line).toBe(
      told.plan.lines.find((line: { id: string }) => line.id === told.plan.workers[0].line).id,
    )
    expect(told.plan.lines[0].stanchions[0].role).toBe('end')
    expect(told.results.findings[0]).toMatchObject({ subject: told.plan.workers[0].id, value: 1.25 })
  })
})
