/** Everything in the plan as a tree with search. Arrow keys walk it, Enter flies there. */
import { Plus } from 'lucide-react'
import { type JSX, type KeyboardEvent, useCallback, useMemo, useRef, useState } from 'react'
import { canRun, labelOf, run } from '../../state/commands/command'
import { command } from '../../state/commands/registry'
import { useApp } from '../../state/store'
import { OutlineRow } from './OutlineRow'
import css from './outline.module.css'
import { outlineGroups, type TreeGroup, type TreeRow } from './tree'

export function Outline(): JSX.Element {
  const plan = useApp((s) => s.plan)
  const units = useApp((s) => s.units)
  const [search, setSearch] = useState('')
  const [folded, setFolded] = useState<ReadonlySet<string>>(new Set())
  const groups = useMemo(() => outlineGroups(plan, units, search), [plan, units, search])
  const fold = useCallback((key: string): void => {
    setFolded((before) => {
      const next = new Set(before)
      if (!next.delete(key)) next.add(key)
      return next
    })
  }, [])
  return (
    <div className={css.outline}>
      <div className={css.search}>
        <input
          type="search"
          placeholder="Search the plan"
          aria-label="Search the plan"
          value={search}
          onChange={(e) => setSearch(e.currentTarget.value)}
        />
      </div>
      <Tree groups={groups} folded={search ? new Set() : folded} fold={fold} searching={search !== ''} />
    </div>
  )
}

function Tree(props: {
  groups: TreeGroup[]
  folded: ReadonlySet<string>
  fold: (key: string) => void
  searching: boolean
}): JSX.Element {
  const box = useRef<HTMLDivElement>(null)
  const onKeyDown = (e: KeyboardEvent): void => {
    const rows = [...(box.current?.querySelectorAll<HTMLElement>('[role="treeitem"]') ?? [])]
    const at = rows.indexOf(e.target as HTMLElement)
    const go = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: rows.length - 1 }[e.key]
    if (at < 0 || go === undefined) return
    e.preventDefault()
    e.stopPropagation()
    rows[Math.max(0, Math.min(rows.length - 1, go))]?.focus()
  }
  const any = props.groups.some((g) => g.rows.length > 0)
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only hears the arrow keys of the rows inside
    <div className={css.tree} ref={box} onKeyDown={onKeyDown}>
      {props.searching && !any ? <p className={css.empty}>Nothing in the plan has that name.</p> : null}
      {props.groups.map((group) =>
        props.searching && group.rows.length === 0 ? null : (
          <Group key={group.id} group={group} folded={props.folded} fold={props.fold} />
        ),
      )}
    </div>
  )
}

function Group(props: {
  group: TreeGroup
  folded: ReadonlySet<string>
  fold: (key: string) => void
}): JSX.Element {
  const { group, folded, fold } = props
  return (
    <div>
      <div className={css.group}>
        <span>{group.title}</span>
        <span className={css.tail}>
          <span className={css.count}>{group.count || ''}</span>
          <AddButton id={group.add} />
        </span>
      </div>
      {group.rows.length > 0 ? (
        <div role="tree" aria-label={group.title} aria-multiselectable="true">
          {visible(group.rows, folded).map((row) => (
            <OutlineRow key={row.key} row={row} folded={folded.has(row.key)} fold={fold} />
          ))}
        </div>
      ) : null}
    </div>
  )
}

/** Rows without those under a folded one. */
function visible(rows: TreeRow[], folded: ReadonlySet<string>): TreeRow[] {
  let hiddenBelow = Number.POSITIVE_INFINITY
  return rows.filter((row) => {
    if (row.depth > hiddenBelow) return false
    hiddenBelow = folded.has(row.key) ? row.depth : Number.POSITIVE_INFINITY
    return true
  })
}

function AddButton({ id }: { id: string }): JSX.Element {
  const record = command(id)
  const enabled = useApp((s) => canRun(record, s))
  return (
    <button
      type="button"
      className={css.add}
      disabled={!enabled}
      aria-label={labelOf(record)}
      title={labelOf(record)}
      onClick={() => run(record)}
    >
      <Plus size={14} aria-hidden />
    </button>
  )
}
