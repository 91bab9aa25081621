import { mkdir, mkdtemp, readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { Host } from '../host'
import { JournalStore } from './journal'

const text = (title: string) => JSON.stringify({ format: 'fallroom-plan', version: 1, title })
const noon = new Date('2030-01-02T12:00:00Z')
const unsaved = { name: 'new plan', path: null, base: null }

let home: string
beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'fallroom-'))
})
afterEach(() => rm(home, { recursive: true, force: true }))

/** An entry as a session that was killed leaves it. */
async function killed(session: JournalStore): Promise<void> {
  const folder = join(home, 'journal')
  for (const name of await readdir(folder)) {
    if (!name.endsWith(`${session.session}.json`)) continue
    const kept = JSON.parse(await readFile(join(folder, name), 'utf8'))
    await writeFile(join(folder, name), JSON.stringify({ ...kept, pid: 2 ** 22 + 1 }))
  }
}

describe('JournalStore', () => {
  it('offers what a killed session left, the latest first', async () => {
    const old = new JournalStore(home)
    await old.write(unsaved, text('a'), noon)
    await old.write(
      { ...unsaved, path: '/x/b.json', name: 'b.json' },
      text('b'),
      new Date(noon.getTime() + 1),
    )
    await killed(old)
    const left = await new JournalStore(home).left()
    expect(left.map(({ record }) => record.text)).toEqual([text('b'), text('a')])
  })

  it('leaves the entries of a living session alone', async () => {
    const other = new JournalStore(home)
    await other.beat(new Date())
    await other.write(unsaved, text('a'), noon)
    expect(await new JournalStore(home).left()).toEqual([])
  })

  it('offers entries whose process number lives on in another program', async () => {
    const other = new JournalStore(home)
    await other.write(unsaved, text('a'), noon)
    await other.beat(new Date())
    const mark = join(home, 'journal', `${other.session}.alive`)
    await utimes(mark, noon, new Date(Date.now() - 120_000))
    expect(await new JournalStore(home).left()).toHaveLength(1)
  })

  it('passes over damaged entries', async () => {
    const old = new JournalStore(home)
    await old.write(unsaved, text('a'), noon)
    await killed(old)
    const folder = join(home, 'journal')
    const [name = ''] = await readdir(folder)
    const whole = await readFile(join(folder, name), 'utf8')
    for (const damaged of [
      whole.slice(0, 40),
      '',
      whole.replace('fallroom-plan', 'fallroom-flan'),
      '{"text":"x"}',
    ]) {
      await writeFile(join(folder, name), damaged)
      expect(await new JournalStore(home).left()).toEqual([])
    }
  })

  it('does not bring an entry back when a write is under way at the clear', async () => {
    const journal = new JournalStore(home)
    const writes = Array.from({ length: 10 }, (_, n) => journal.write(unsaved, text(`${n}`), noon))
    await Promise.all([...writes, journal.clear(null)])
    expect(await journal.left()).toEqual([])
  })

  it('removes only what is an entry', async () => {
    await mkdir(join(home, 'journal'))
    await writeFile(join(home, 'precious.json'), 'x')
    await new JournalStore(home).drop('../precious.json')
    expect(await readFile(join(home, 'precious.json'), 'utf8')).toBe('x')
  })

  it('says in plain words that it cannot write', async () => {
    await writeFile(join(home, 'journal'), 'a file in the way')
    const said = await new JournalStore(home).write(unsaved, text('a'), noon)
    expect(said).toMatchObject({ ok: false })
    expect(!said.ok && said.why).toContain('Unsaved changes could not be kept aside')
  })
})

describe('what the host offers at the next start', () => {
  async function crashed(change: string): Promise<{ plan: string; next: Host }> {
    const plan = join(home, 'a.json')
    await writeFile(plan, text('saved'))
    const host = new Host(home)
    const file = await host.openPath(plan)
    if (!file.ok) throw new Error(file.why)
    await host.journalWrite(file.value.id, 'a.json', text(change))
    await host.end()
    return { plan, next: new Host(home) }
  }

  it('the unsaved text, with the file it belongs to, ready to save', async () => {
    const { plan, next } = await crashed('edited')
    const pending = await next.journalPending()
    if (!pending.ok) throw new Error(pending.why)
    expect(pending.value).toMatchObject([{ text: text('edited'), fileChanged: false, file: { place: plan } }])
    const saved = await next.save(pending.value[0]?.file?.id ?? null, text('edited'), false)
    expect(saved).toMatchObject({ ok: true })
    await next.end()
  })

  it('a warning where the file was changed meanwhile', async () => {
    const { plan, next } = await crashed('edited')
    await writeFile(plan, text('theirs'))
    const pending = await next.journalPending()
    expect(pending).toMatchObject({ ok: true, value: [{ fileChanged: true }] })
    const id = pending.ok ? (pending.value[0]?.file?.id ?? null) : null
    expect(await next.save(id, text('edited'), false)).toMatchObject({ code: 'changed-on-disk' })
    await next.end()
  })

  it('nothing where the text was saved before the end', async () => {
    const { next } = await crashed('saved')
    expect(await next.journalPending()).toEqual({ ok: true, value: [] })
    await next.end()
  })
})
