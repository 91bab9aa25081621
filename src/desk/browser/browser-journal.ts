import { type Journal, type JournalEntry, refused, said } from '../bridge'

const PREFIX = 'fallroom-journal:'

/** The journal of a bare browser: its own local storage, which outlives the page. */
export function createBrowserJournal(store: Storage = localStorage): Journal {
  const own = `${PREFIX}${crypto.randomUUID()}`
  const earlier = Object.keys(store).filter((key) => key.startsWith(PREFIX))
  return {
    write: async (_id, name, text) => {
      try {
        store.setItem(own, JSON.stringify({ name, text, at: new Date().toISOString() }))
        return said(null)
      } catch {
        return refused('disk-full', 'The browser has no room left to keep unsaved changes. Save the plan.')
      }
    },
    pending: async () => said(earlier.flatMap((key) => readEntry(store, key))),
    clear: async () => forget(store, own),
    drop: async (entry) => (entry.startsWith(PREFIX) ? forget(store, entry) : said(null)),
  }
}

function forget(store: Storage, key: string) {
  store.removeItem(key)
  return said(null)
}

function readEntry(store: Storage, key: string): JournalEntry[] {
  try {
    const kept = JSON.parse(store.getItem(key) ?? 'null')
    if (typeof kept?.text !== 'string') return []
    return [
      {
        entry: key,
        name: String(kept.name),
        at: String(kept.at),
        text: kept.text,
        file: null,
        fileChanged: false,
      },
    ]
  } catch {
    return []
  }
}
