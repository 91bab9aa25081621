import { describe, expect, it } from 'vitest'
import { checkable, planFaults, readPlan } from '../../src/plan/read'
import { writePlan } from '../../src/plan/write'
import { faultsAfter, type Loose, SAMPLES, sample, sampleText } from './plan-support'

type Case = [what: string, spoil: (p: Loose) => void, path: string, words: RegExp]

const CASES: Case[] = [
  ['negative mass', (p) => (p.workers[0].mass = -80), '$.workers[0].mass', /more|or more, is -80/],
  ['a number as text', (p) => (p.lines[0].pretension = '4450'), '$.lines[0].pretension', /without quotes/],
  ['NaN as text', (p) => (p.workers[1].mass = 'NaN'), '$.workers[1].mass', /is the text "NaN"/],
  ['null for a number', (p) => (p.workers[0].mass = null), '$.workers[0].mass', /must be a number, is null/],
  [
    'zero spacing',
    (p) => (p.girders[0].loops[0].spacing = 0),
    '$.girders[0].loops[0].spacing',
    /more than 0/,
  ],
  ['half a loop', (p) => (p.girders[0].loops[0].count = 12.5), '$.girders[0].loops[0].count', /whole number/],
  [
    'low above high',
    (p) => (p.parts[0].axialStiffness.low = 9e6),
    '$.parts[0].axialStiffness.low',
    /above the high/,
  ],
  [
    'full below onset',
    (p) => (p.parts[1].full = { low: 9000, high: 9200 }),
    '$.parts[1].full',
    /above the force at onset/,
  ],
  ['no title', (p) => delete p.title, '$.title', /missing: text/],
  ['a word for the units', (p) => (p.units = 'imperial'), '$.units', /one of "us", "si"/],
  ['an unknown kind of part', (p) => (p.parts[0].kind = 'chain'), '$.parts[0].kind', /one of "wire-rope"/],
  [
    'a girder without length',
    (p) => (p.girders[0].end = [...p.girders[0].start]),
    '$.girders[0].end',
    /no length/,
  ],
  ['a girder that stands on end', (p) => (p.girders[0].end = [0, 0, 40]), '$.girders[0].end', /no length/],
  [
    'thicknesses beyond the depth',
    (p) => (p.girders[0].section.depth = 0.1),
    '$.girders[0].section.depth',
    /together/,
  ],
  [
    'one stanchion',
    (p) => p.lines[0].stanchions.splice(1),
    '$.lines[0].stanchions',
    /two stanchions at least, has only one/,
  ],
  ['no stanchions', (p) => (p.lines[0].stanchions = []), '$.lines[0].stanchions', /has none/],
  [
    'stanchions out of order',
    (p) => (p.lines[0].stanchions[2].station = 3),
    '$.lines[0].stanchions[2].station',
    /stands before S2/,
  ],
  [
    'two at one station',
    (p) => (p.lines[0].stanchions[1].station = p.lines[0].stanchions[0].station),
    '$.lines[0].stanchions[1].station',
    /same station as S1/,
  ],
  [
    'a first stanchion that is no end',
    (p) => (p.lines[0].stanchions[0].role = 'intermediate'),
    '$.lines[0].stanchions[0].role',
    /must be "end"/,
  ],
  [
    'an end in the middle',
    (p) => (p.lines[0].stanchions[1].role = 'end'),
    '$.lines[0].stanchions[1].role',
    /must be "intermediate"/,
  ],
  [
    'a station past the girder',
    (p) => (p.lines[0].stanchions[3].station = 32.5),
    '$.lines[0].stanchions[3].station',
    /beyond the end of girder G2/,
  ],
  [
    'a rope that is not there',
    (p) => (p.lines[0].wireRope = 'gone'),
    '$.lines[0].wireRope',
    /nothing with that id/,
  ],
  [
    'a rope that is a shackle',
    (p) => (p.lines[0].wireRope = 'shackle-12'),
    '$.lines[0].wireRope',
    /wire rope, is "shackle-12": that is a hardware/,
  ],
  ['hardware that is not there', (p) => (p.lines[0].hardware[1] = 'x'), '$.lines[0].hardware[1]', /hardware/],
  [
    'an absorber that is not there',
    (p) => (p.lines[0].absorber = 'x'),
    '$.lines[0].absorber',
    /line absorber/,
  ],
  ['a girder that is not there', (p) => (p.lines[0].girder = 'G9'), '$.lines[0].girder', /girder, is "G9"/],
  [
    'a bracket that is not there',
    (p) => (p.lines[0].stanchions[1].bracket = 'x'),
    '$.lines[0].stanchions[1].bracket',
    /bracket/,
  ],
  ['a worker on no line', (p) => (p.workers[0].line = 'L7'), '$.workers[0].line', /line, is "L7"/],
  [
    'a connector that is a rope',
    (p) => (p.workers[0].connector = 'rope-10'),
    '$.workers[0].connector',
    /that is a wire rope/,
  ],
  [
    'a loop row that is not there',
    (p) => (p.lines[0].tieBacks[0].strapLoop.row = 'Z'),
    '$.lines[0].tieBacks[0].strapLoop.row',
    /no loop row/,
  ],
  [
    'a loop past its row',
    (p) => (p.lines[0].tieBacks[0].tensionerLoop.index = 500),
    '$.lines[0].tieBacks[0].tensionerLoop.index',
    /there is no 500/,
  ],
  [
    'a tie-back on no stanchion',
    (p) => (p.lines[0].tieBacks[0].stanchion = 'S9'),
    '$.lines[0].tieBacks[0].stanchion',
    /no stanchion/,
  ],
  [
    'an id that stands twice',
    (p) => (p.workers[1].id = 'W1'),
    '$.workers[1].id',
    /stands already at \$\.workers\[0\]/,
  ],
  [
    'an id shared by two kinds',
    (p) => (p.workers[1].id = 'G2'),
    '$.workers[1].id',
    /stands already at \$\.girders\[0\]/,
  ],
  ['an empty id', (p) => (p.girders[0].id = ''), '$.girders[0].id', /not be empty/],
  ['an empty source', (p) => (p.parts[0].source = ' '), '$.parts[0].source', /where the figures come from/],
  [
    'a model above the plan',
    (p) => (p.obstacles[0] = { id: 'm', name: 'm', kind: 'mesh', file: '../../etc/passwd' }),
    '$.obstacles[0].file',
    /leads out/,
  ],
  ['a date that is none', (p) => (p.records[0].at = 'yesterday'), '$.records[0].at', /date and time like/],
  ['no safety factor below one', (p) => (p.basis.safetyFactor = 0.5), '$.basis.safetyFactor', /1 or more/],
  [
    'a field of another version of JavaScript',
    (p) => (p.workers[0] = []),
    '$.workers[0]',
    /object with named fields/,
  ],
  [
    'a control character',
    (p) => (p.girders[0].name = 'a\u001b[2J'),
    '$.girders[0].name',
    /control character/,
  ],
  ['a text that never ends', (p) => (p.notes = 'x'.repeat(30_000)), '$.notes', /30000 characters/],
  ['a list that never ends', (p) => (p.obstacles = Array(30_000).fill(1)), '$.obstacles', /30000 entries/],
]

describe('a plan with one fault', () => {
  it.each(CASES)('tells %s', (_what, spoil, path, words) => {
    const faults = faultsAfter(spoil)
    const told = faults.find((f) => f.path === path)
    expect(faults.map((f) => f.path)).toContain(path)
    expect(told?.message).toMatch(words)
  })

  it('tells nothing else where one thing is wrong', () => {
    expect(faultsAfter((p) => (p.workers[0].mass = -80))).toHaveLength(1)
    expect(faultsAfter((p) => (p.lines[0].wireRope = 'gone'))).toHaveLength(1)
  })
})

describe('a plan with many faults', () => {
  it('tells all of them at once, also behind those of another piece', () => {
    const paths = faultsAfter((p) => {
      p.girders[0].section.depth = -1
      p.lines[0].stanchions[1].part = 'gone'
      p.lines[0].stanchions[2].offset = 'left'
      p.lines[0].tieBacks[1].stanchion = 'S9'
      p.workers[0].connector = 'gone'
      p.workers[1].mass = 0
    }).map((f) => f.path)
    expect(paths).toEqual(
      expect.arrayContaining([
        '$.girders[0].section.depth',
        '$.lines[0].stanchions[1].part',
        '$.lines[0].stanchions[2].offset',
        '$.lines[0].tieBacks[1].stanchion',
        '$.workers[0].connector',
        '$.workers[1].mass',
      ]),
    )
    expect(paths).toHaveLength(6)
  })

  it('says in which line each stands', () => {
    const text = sampleText('thin-margins').replace('"dRingHeight": 1.52', '"dRingHeight": -1.52')
    const read = readPlan(text)
    const line = text.split('\n').findIndex((l) => l.includes('-1.52')) + 1
    expect(read.ok ? [] : read.faults).toMatchObject([{ path: '$.workers[0].dRingHeight', line }])
  })
})

describe('text that is no plan', () => {
  const reasons = (text: string): string => {
    const read = readPlan(text)
    if (read.ok) throw new Error('was read')
    expect(read.faults.every((f) => f.path.startsWith('$'))).toBe(true)
    return read.faults.map((f) => `${f.path} ${f.message}`).join('; ')
  }

  it('is refused with the place where it stops being JSON', () => {
    expect(reasons('')).toMatch(/empty/)
    expect(reasons('hello')).toMatch(/line 1, column 1/)
    expect(reasons('{"format":"fallroom-plan","version":1,"mass":NaN}')).toMatch(
      /\$\.mass .*NaN and Infinity/,
    )
    expect(reasons(sampleText('thin-margins').slice(0, 2000))).toMatch(/cut short|closing/)
    expect(reasons('{"a":1,}')).toMatch(/no JSON/)
    expect(reasons('{"format":"fallroom-plan",\n"version":1,\n"version":1}')).toMatch(
      /\$\.version stands twice.*line 3/,
    )
  })

  it('is refused by its head alone', () => {
    expect(reasons('[]')).toMatch(/this is a list/)
    expect(reasons('null')).toMatch(/this is null/)
    expect(reasons('{"version":1}')).toMatch(/\$\.format/)
    expect(reasons('{"format":"fallroom-results","version":1}')).toMatch(/no plan file/)
    expect(reasons('{"format":"fallroom-plan","version":"1"}')).toMatch(/\$\.version/)
    const newer = sampleText('thin-margins').replace('"version": 1', '"version": 2')
    expect(reasons(newer)).toMatch(/\$\.version .*version 2.*newer program and is left alone/)
  })

  it('is refused without harm where it is hostile', () => {
    expect(reasons('['.repeat(5_000_000))).toMatch(/40 deep/)
    expect(reasons(`{"a":${'{"a":'.repeat(100)}1${'}'.repeat(101)}`)).toMatch(/40 deep/)
    expect(reasons(' '.repeat(20_000_001))).toMatch(/too large: 20\.0 MB/)
    const proto = sampleText('thin-margins').replace('"title"', '"__proto__": { "isAdmin": true }, "title"')
    expect(reasons(proto)).toMatch(/__proto__/)
    expect(({} as Loose).isAdmin).toBeUndefined()
    expect(reasons('{"format":"fallroom-plan","version":1,"x":1e999}')).toMatch(/\$\.x is no finite number/)
  })
})

describe('a good plan', () => {
  it.each(SAMPLES)('%s is read, written and read again as the same', (name) => {
    const plan = sample(name)
    expect(readPlan(writePlan(plan))).toMatchObject({ ok: true, plan })
    expect(JSON.parse(writePlan(plan))).toEqual(JSON.parse(sampleText(name)))
    expect(planFaults(plan)).toEqual([])
  })

  it('keeps fields that are not known, wherever they stand', () => {
    const loose = structuredClone(sample()) as Loose
    loose.crane = { reach: [1, 2, { far: true }] }
    loose.girders[0].colour = 'grey'
    loose.lines[0].stanchions[1].torque = 47
    loose.parts[0].lot = 'A-1'
    const read = readPlan(JSON.stringify(loose))
    if (!read.ok) throw new Error(JSON.stringify(read.faults))
    expect(JSON.parse(writePlan(read.plan))).toEqual(loose)
  })

  it('may come with a byte order mark and CRLF', () => {
    expect(readPlan(`\uFEFF${sampleText('thin-margins').replaceAll('\n', '\r\n')}`).ok).toBe(true)
  })

  it('may have no lines, and then cannot be checked', () => {
    const plan = { ...sample(), lines: [], workers: [], records: [] }
    expect(readPlan(writePlan(plan)).ok).toBe(true)
    expect(checkable(plan)).toEqual([{ path: '$.lines', message: expect.stringContaining('no lines') }])
    expect(checkable(sample())).toEqual([])
  })

  it('may name loop rows alike on different girders, which is told', () => {
    const plan = sample('four-girder-bay')
    plan.girders[1]!.loops[0]!.id = 'A1'
    const read = readPlan(writePlan(plan))
    expect(read.ok && read.notes.join()).toMatch(/A1 stands on girders G1, G2/)
  })

  it('is refused in memory as from a file', () => {
    const plan = sample()
    plan.lines[0]!.pretension = Number.NaN
    expect(planFaults(plan)).toMatchObject([{ path: '$.lines[0].pretension' }])
    expect(() => writePlan(plan)).toThrow(/finite/)
  })
})
