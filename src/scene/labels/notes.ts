/** Notes on the picture itself, in its lower left corner: what is drawn to another scale, and to which. */
import { useEffect } from 'react'
import { create } from 'zustand'

export const notes = create<{ all: ReadonlyMap<string, string> }>()(() => ({ all: new Map() }))

function set(id: string, text: string | null): void {
  const all = new Map(notes.getState().all)
  if (text) all.set(id, text)
  else all.delete(id)
  notes.setState({ all })
}

/** Writes a note on the picture while the calling part is there: "Forces: 1 m is 5 kN". */
export function useNote(id: string, text: string | null): void {
  useEffect(() => {
    set(id, text)
    return () => set(id, null)
  }, [id, text])
}
