/**
 * A program that edits and saves as fast as it can, until it is killed: every change goes to the journal, every third is
 * saved. It says each change's number once the desk has said that it is kept, so that the test knows what must be there.
 */
import { writeSync } from 'node:fs'
import { Host } from '../host'

const [plan = '', home = ''] = process.argv.slice(2)
const host = new Host(home)
const opened = await host.openPath(plan)
if (!opened.ok) throw new Error(opened.why)
const { id } = opened.value
const start = await restored(opened.value.text)

for (let change = start + 1; ; change += 1) {
  // The filler makes a write long enough to be hit half-way.
  const text = JSON.stringify({
    format: 'fallroom-plan',
    version: 1,
    notes: change,
    filler: 'x'.repeat(200_000),
  })
  const kept = await host.journalWrite(id, 'plan.json', text)
  if (kept.ok) say('journal', change)
  if (change % 3 !== 0) continue
  const saved = await host.save(id, text, false)
  if (saved.ok) say('saved', change)
  await host.journalClear(id)
}

/** Goes on from the latest change that the last program left, and gives its entries up only once that is kept again. */
async function restored(saved: string): Promise<number> {
  const pending = await host.journalPending()
  const left = pending.ok ? pending.value : []
  const texts = [saved, ...left.map((entry) => entry.text)]
  const latest = texts.reduce((a, b) => (number(b) > number(a) ? b : a))
  await host.journalWrite(id, 'plan.json', latest)
  for (const entry of left) await host.journalDrop(entry.entry)
  return number(latest)
}

function number(text: string): number {
  return JSON.parse(text).notes
}

/** Straight to the pipe: what is still in a buffer dies with the program. */
function say(what: string, change: number): void {
  writeSync(1, `${what} ${change}\n`)
}
