import {
  type FileRef,
  type FileState,
  type JournalEntry,
  MAX_PLAN_BYTES,
  type OpenedFile,
  type PickedFile,
  type RecentFile,
  refused,
  type Said,
  said,
} from '../src/desk/bridge'
import { fileFault } from './files/fault'
import { dataHome } from './files/home'
import { BEAT, type JournalRecord, JournalStore } from './files/journal'
import { copyModels, keepModel, readModel } from './files/models'
import { PlanFiles } from './files/plan-files'
import { fingerprint, readText } from './files/read-file'
import { RecentList } from './files/recent-list'
import { Settings } from './files/settings'
import { writeAtomic } from './files/write-atomic'

const noPlace = refused('no-place', 'Save the plan first: models lie beside it.')

/** The file work of both desktops: what Electron's main process and the loopback host do for the window. */
export class Host {
  readonly files = new PlanFiles()
  private journal: JournalStore
  private recentList: RecentList
  readonly settings: Settings
  private beat: NodeJS.Timeout

  constructor(
    readonly home: string = dataHome(),
    private now: () => Date = () => new Date(),
  ) {
    this.journal = new JournalStore(home)
    this.recentList = new RecentList(home)
    this.settings = new Settings(home)
    void this.journal.beat(now())
    this.beat = setInterval(() => void this.journal.beat(this.now()), BEAT)
    this.beat.unref()
  }

  /** Only for a path that the person gave: on the command line, in a dialog, by dropping a file. */
  async openPath(path: string): Promise<Said<OpenedFile>> {
    const opened = await this.files.open(path)
    if (opened.ok) await this.recentList.add(opened.value.place, this.now())
    return opened
  }

  async openRecent(id: string): Promise<Said<OpenedFile>> {
    const path = await this.recentList.pathOf(id)
    if (path === null) return refused('missing', 'That plan is not in the list any more.')
    const opened = await this.openPath(path)
    if (!opened.ok && opened.code === 'missing') await this.recentList.remove(path)
    return opened
  }

  async recent(): Promise<Said<RecentFile[]>> {
    return said(await this.recentList.all())
  }

  save(id: string | null, text: string, overwrite: boolean): Promise<Said<FileRef>> {
    return this.files.save(id, text, overwrite)
  }

  async saveTo(path: string, text: string, from: string | null): Promise<Said<FileRef>> {
    const saved = await this.files.saveTo(path, text)
    if (!saved.ok) return saved
    const old = this.files.get(from)
    if (old) await copyModels(text, old.path, saved.value.place)
    // What was kept under the old name, or under none, is in the new file now.
    await this.journalClear(from)
    await this.recentList.add(saved.value.place, this.now())
    return saved
  }

  state(id: string): Promise<Said<FileState>> {
    return this.files.state(id)
  }

  async readMesh(id: string | null, file: string): Promise<Said<PickedFile>> {
    const plan = this.files.get(id)
    return plan ? readModel(plan.path, file) : noPlace
  }

  async keepMesh(id: string | null, file: PickedFile): Promise<Said<string>> {
    const plan = this.files.get(id)
    return plan ? keepModel(plan.path, file) : noPlace
  }

  /** Papers and drawings, to a place that the person chose in a dialog. */
  async exportTo(path: string, name: string, bytes: Uint8Array): Promise<Said<string>> {
    try {
      await writeAtomic(path, bytes)
      return said(name)
    } catch (error) {
      return fileFault(error, name)
    }
  }

  journalWrite(id: string | null, name: string, text: string): Promise<Said<null>> {
    const file = this.files.get(id)
    return this.journal.write({ name, path: file?.path ?? null, base: file?.base ?? null }, text, this.now())
  }

  journalClear(id: string | null): Promise<Said<null>> {
    return this.journal.clear(this.files.get(id)?.path ?? null)
  }

  journalForget(): Promise<Said<null>> {
    return this.journal.forget()
  }

  journalDrop(entry: string): Promise<Said<null>> {
    return this.journal.drop(entry)
  }

  async journalPending(): Promise<Said<JournalEntry[]>> {
    const left = await this.journal.left()
    const offers = await Promise.all(left.map(({ entry, record }) => this.offer(entry, record)))
    return said(offers.filter((one) => one !== null))
  }

  /** Where the file already holds the entry's text, the program ended between saving and forgetting: nothing to ask. */
  private async offer(entry: string, record: JournalRecord): Promise<JournalEntry | null> {
    const { name, at, text, path, base } = record
    if (path === null) return { entry, name, at, text, file: null, fileChanged: false }
    const now = await readText(path, MAX_PLAN_BYTES)
    if (now.ok && now.value === text) {
      await this.journal.drop(entry)
      return null
    }
    const fileChanged = now.ok && fingerprint(now.value) !== base
    return { entry, name, at, text, file: await this.files.register(path, base), fileChanged }
  }

  async end(): Promise<void> {
    clearInterval(this.beat)
    await this.journal.end()
  }
}
