/** That every number of a results document stands in the text of a calculation package, in its place. */
import { expect, it } from 'vitest'
import type { Plan } from '../../../src/plan/types'
import type { Finding, Results } from '../../../src/study/results'
import { reads, take } from './printed'

/** `text` gives the whole package once it is made, with every run of white space as one space. */
export function numbersStand(text: () => string, plan: Plan, results: Results): void {
  /** As `check --json` prints them and another program reads them. */
  const told = JSON.parse(JSON.stringify(results)) as Results

  it('says value, limit and margin of each finding in its row, in this order', () => {
    let numbers = 0
    for (const f of told.findings) {
      const where = `${f.rule} ${f.subject}`
      const wanted = [f.value, f.limit, f.margin ?? null]
      const row = rowOf(text(), f)
      // The row has no mark where its words begin, so every place is tried from which all of it can be read.
      const starts = [...row.matchAll(/(?<=^| )\S/g)].map((m) => m.index)
      const fits = starts.some((start) => reads(row.slice(start), wanted, f.unit, where))
      expect(fits, `${where}: ${wanted.join(', ')} in "${row.slice(-90)}"`).toBe(true)
      numbers += wanted.filter((n) => n !== null).length
    }
    expect(numbers).toBeGreaterThan(100)
  })

  it('says every gap in the row of its obstacle, and the least distance any way beside it', () => {
    const table = text().slice(text().indexOf('Gaps and clashes'))
    expect(told.obstacles.filter((o) => o.gap !== null).length).toBeGreaterThan(1)
    for (const o of told.obstacles) {
      const name = [...plan.obstacles, ...plan.girders].find((x) => x.id === o.id)!.name
      const row = table.slice(table.indexOf(`${name} (${o.id})`) + `${name} (${o.id}) `.length)
      if (o.gap === null) expect(row.startsWith('not under the room')).toBe(true)
      else {
        const rest = take(row, o.gap, 'm', `gap of ${o.id}`).replace(/^: clash /, '')
        if (o.nearest !== null && o.nearest !== undefined) take(rest, o.nearest, 'm', `nearest of ${o.id}`)
      }
    }
  })

  it('says the governing numbers and the installed tension of each line in its row', () => {
    const table = text().slice(text().indexOf('Clearance below the walking surface'))
    for (const line of told.lines) {
      const { name } = plan.lines.find((l) => l.id === line.id)!
      const { tension, clearance, wireRopeSafetyFactor } = line.governing
      let rest = table.slice(table.indexOf(name) + name.length + 1)
      const wanted: [number | null, string][] = [
        [line.installed.tension, 'N'],
        [tension, 'N'],
        [wireRopeSafetyFactor, 'ratio'],
        // Of every fall, beside a stanchion too: what the rule tells, not the figure of mid-span falls.
        [greatestOf(told, line.falls), 'N'],
        [clearance, 'm'],
      ]
      for (const [value, unit] of wanted) rest = take(rest, value!, unit, `${name}, ${unit}`)
    }
  })
}

const greatestOf = ({ findings }: Results, falls: { worker: string }[]): number =>
  Math.max(
    ...findings
      .filter((f) => f.rule === 'arrest-force' && falls.some((x) => x.worker === f.subject))
      .map((f) => f.value!),
  )

/** What stands before the words of a finding: its title and subject, then its figures. */
function rowOf(text: string, f: Finding): string {
  const at = text.indexOf(f.text.replace(/\s+/g, ' '))
  expect(at, f.text).toBeGreaterThan(0)
  return text.slice(Math.max(0, at - 160), at)
}
