/** The parts library: what the plan has, the person's own, and generic ones to begin from. Search, look, take, change. */
import { Button, NativeSelect, TextInput } from '@mantine/core'
import { type JSX, useState } from 'react'
import { partLibrary } from '../../plan/library'
import type { Part, PartKind } from '../../plan/types'
import { partKinds, partKindWord } from '../../state/parts/part-fields'
import { app, useApp } from '../../state/store'
import { DialogFrame } from '../shell/DialogFrame'
import { PartDetail } from './PartDetail'
import { PartFiles } from './PartFiles'
import css from './parts.module.css'

export interface ListedPart {
  part: Part
  from: 'plan' | 'own' | 'library'
}

const fromWord = { plan: 'in the plan', own: 'own', library: 'example' }

export default function PartsDialog(): JSX.Element {
  const choose = useApp((s) => (s.dialog?.kind === 'parts' ? s.dialog.choose : undefined))
  const [search, setSearch] = useState('')
  const [kind, setKind] = useState<PartKind | ''>(choose?.kind ?? '')
  const [id, setId] = useState<string | null>(null)
  const list = useListed(search, kind)
  const shown = list.find((l) => l.part.id === id) ?? list[0]
  return (
    <DialogFrame title={choose ? `Parts: ${choose.label}` : 'Parts library'} size="xl">
      <div className={css.head}>
        <TextInput
          data-autofocus
          aria-label="Search parts"
          placeholder="Search parts"
          value={search}
          onChange={(e) => setSearch(e.currentTarget.value)}
        />
        <NativeSelect
          aria-label="Kind of part"
          value={kind}
          data={[
            { value: '', label: 'All kinds' },
            ...partKinds.map((k) => ({ value: k, label: partKindWord[k] })),
          ]}
          onChange={(e) => setKind(e.currentTarget.value as PartKind | '')}
        />
        <PartFiles />
      </div>
      <div className={css.body}>
        <div className={css.list} role="listbox" aria-label="Parts">
          {list.length === 0 ? <p className={css.quiet}>No part has that name.</p> : null}
          {list.map((listed) => (
            <PartRow
              key={listed.part.id}
              listed={listed}
              chosen={listed === shown}
              onChoose={() => setId(listed.part.id)}
            />
          ))}
        </div>
        {shown ? <PartDetail listed={shown} choose={choose} /> : null}
      </div>
      {kind ? (
        <Button mt="sm" onClick={() => newPart(kind)}>
          New {partKindWord[kind].toLowerCase()} of your own
        </Button>
      ) : (
        <p className={css.quiet}>Choose a kind to add a part of your own.</p>
      )}
    </DialogFrame>
  )
}

function PartRow({
  listed,
  chosen,
  onChoose,
}: {
  listed: ListedPart
  chosen: boolean
  onChoose: () => void
}): JSX.Element {
  const { part, from } = listed
  return (
    <button
      type="button"
      role="option"
      aria-selected={chosen}
      className={css.row}
      onClick={onChoose}
      data-part={part.id}
    >
      <span>
        {part.name}
        <br />
        <span className={css.quiet}>{partKindWord[part.kind]}</span>
      </span>
      <span className={css.quiet}>{fromWord[from]}</span>
    </button>
  )
}

/** Plan first, then own, then the library; each id once. */
function useListed(search: string, kind: PartKind | ''): ListedPart[] {
  const plan = useApp((s) => s.plan.parts)
  const own = useApp((s) => s.ownParts)
  const all: ListedPart[] = [
    ...plan.map((part): ListedPart => ({ part, from: 'plan' })),
    ...own.map((part): ListedPart => ({ part, from: 'own' })),
    ...partLibrary.map((part): ListedPart => ({ part, from: 'library' })),
  ]
  const seen = new Set<string>()
  const word = search.trim().toLowerCase()
  return all.filter(({ part }) => {
    const fits =
      (!kind || part.kind === kind) && `${part.name} ${part.id} ${part.source}`.toLowerCase().includes(word)
    const first = !seen.has(part.id)
    seen.add(part.id)
    return fits && first
  })
}

/** A new part begins as a copy of the first of its kind, without a source: that must be typed. */
function newPart(kind: PartKind): void {
  const like = partLibrary.find((p) => p.kind === kind)
  if (!like) return
  const part = { ...structuredClone(like), id: freeId(kind), name: '', source: '' } as Part
  app.setState({ dialog: { kind: 'part', part, own: true } })
}

export function freeId(kind: PartKind): string {
  const { plan, ownParts } = app.getState()
  const taken = new Set([...plan.parts, ...ownParts, ...partLibrary].map((p) => p.id))
  let n = 1
  while (taken.has(`own-${kind}-${n}`)) n++
  return `own-${kind}-${n}`
}
