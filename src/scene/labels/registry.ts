/** Texts pinned to points of the scene. Parts of the scene tell theirs; the layer over the canvas shows them. */
import { useEffect } from 'react'
import { create } from 'zustand'
import type { Vec3 } from '../../plan/types'
import type { Ref } from '../../state/refs'

/** How a label looks: a dimension, a name, the value of what is held, something that fails or wants a look. */
export type Tone = 'dimension' | 'quiet' | 'value' | 'fails' | 'look' | 'force' | 'compare'

export interface Label {
  id: string
  at: Vec3
  text: string
  tone: Tone
  /** Of two labels that would cover one another the one with less gives way. */
  rank: number
  /** Pixels from the point, right and down. */
  shift?: [number, number]
  /** Pressing it opens this thing's figures, to be typed. */
  opens?: Ref
}

export const labels = create<{ all: ReadonlyMap<string, Label> }>()(() => ({ all: new Map() }))

function put(label: Label): void {
  labels.setState({ all: new Map(labels.getState().all).set(label.id, label) })
}

function drop(id: string): void {
  const all = new Map(labels.getState().all)
  if (all.delete(id)) labels.setState({ all })
}

const same = (a: Label, b: Label): boolean => JSON.stringify(a) === JSON.stringify(b)

/** Shows a label while the calling part is there; null shows none. */
export function useLabel(id: string, label: Omit<Label, 'id'> | null): void {
  useEffect(() => {
    if (!label) return drop(id)
    const next = { ...label, id }
    const now = labels.getState().all.get(id)
    if (!now || !same(now, next)) put(next)
  })
  useEffect(() => () => drop(id), [id])
}
