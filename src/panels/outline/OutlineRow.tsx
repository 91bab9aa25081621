import { ChevronDown, ChevronRight, Eye, EyeOff, Lock, LockOpen } from 'lucide-react'
import { type JSX, type KeyboardEvent, type MouseEvent, memo } from 'react'
import { hover, lookAtRef, select } from '../../state/actions'
import { worstById } from '../../state/derived'
import { hasRef, sameRef } from '../../state/refs'
import { app, useApp } from '../../state/store'
import { StatusMark } from '../words/StatusMark'
import css from './outline.module.css'
import type { TreeRow } from './tree'

interface Props {
  row: TreeRow
  folded: boolean
  /** The same from one drawing to the next. */
  fold: (key: string) => void
}

/** The tree is told anew with every change of the plan; a row whose words are the same is left as it is. */
const sameWords = (a: Props, b: Props): boolean =>
  a.folded === b.folded &&
  a.fold === b.fold &&
  a.row.key === b.row.key &&
  a.row.name === b.row.name &&
  a.row.detail === b.row.detail &&
  a.row.depth === b.row.depth &&
  a.row.folds === b.row.folds

export const OutlineRow = memo(function OutlineRow({ row, folded, fold }: Props): JSX.Element {
  const selected = useApp((s) => hasRef(s.selection, row.ref))
  const hovered = useApp((s) => sameRef(s.hover, row.ref))
  const hidden = useApp((s) => s.hidden.includes(row.ref.id))
  const locked = useApp((s) => s.locked.includes(row.ref.id))
  const click = (e: MouseEvent): void => select(row.ref, e.ctrlKey || e.metaKey || e.shiftKey)
  const key = (e: KeyboardEvent): void => {
    if (e.target !== e.currentTarget) return
    if (e.key === 'Enter') lookAtRef(row.ref)
    if (e.key === ' ') select(row.ref, e.ctrlKey || e.metaKey)
    if (e.key === ' ' || e.key === 'Enter') e.preventDefault()
    if (
      row.folds &&
      (e.key === 'ArrowLeft') !== folded &&
      (e.key === 'ArrowLeft' || e.key === 'ArrowRight')
    ) {
      e.stopPropagation()
      fold(row.key)
    }
  }
  return (
    <div
      className={css.row}
      role="treeitem"
      tabIndex={0}
      aria-selected={selected}
      aria-level={row.depth}
      aria-expanded={row.folds ? !folded : undefined}
      data-ref={row.key}
      data-hover={hovered}
      data-hidden={hidden}
      data-locked={locked}
      style={{ '--depth': row.depth - 1 } as React.CSSProperties}
      onClick={click}
      onDoubleClick={() => lookAtRef(row.ref)}
      onKeyDown={key}
      onFocus={() => hover(row.ref)}
      onBlur={() => hover(null)}
      onMouseEnter={() => hover(row.ref)}
      onMouseLeave={() => hover(null)}
      onContextMenu={() => {
        if (!selected) select(row.ref)
      }}
    >
      {row.folds ? <Twist folded={folded} onClick={() => fold(row.key)} /> : null}
      <span className={css.name}>{row.name}</span>
      <span className={css.detail}>{row.detail}</span>
      <RowTools id={row.ref.id} hidden={hidden} locked={locked} />
      <RowStatus id={row.ref.id} />
    </div>
  )
}, sameWords)

function Twist({ folded, onClick }: { folded: boolean; onClick: () => void }): JSX.Element {
  const Icon = folded ? ChevronRight : ChevronDown
  return (
    <button
      type="button"
      className={css.twist}
      tabIndex={-1}
      aria-label={folded ? 'Unfold' : 'Fold'}
      onClick={(e) => {
        e.stopPropagation()
        onClick()
      }}
    >
      <Icon size={12} aria-hidden />
    </button>
  )
}

function RowTools({ id, hidden, locked }: { id: string; hidden: boolean; locked: boolean }): JSX.Element {
  return (
    <span className={css.tools}>
      <button
        type="button"
        className={css.tool}
        tabIndex={-1}
        aria-label={hidden ? 'Show' : 'Hide'}
        title={hidden ? 'Show' : 'Hide'}
        onClick={(e) => flip(e, 'hidden', id)}
      >
        {hidden ? <EyeOff size={13} /> : <Eye size={13} />}
      </button>
      <button
        type="button"
        className={css.tool}
        tabIndex={-1}
        aria-label={locked ? 'Unlock' : 'Lock'}
        title={locked ? 'Unlock' : 'Lock'}
        onClick={(e) => flip(e, 'locked', id)}
      >
        {locked ? <Lock size={13} /> : <LockOpen size={13} />}
      </button>
    </span>
  )
}

function flip(e: MouseEvent, list: 'hidden' | 'locked', id: string): void {
  e.stopPropagation()
  const ids = app.getState()[list]
  app.setState({ [list]: ids.includes(id) ? ids.filter((i) => i !== id) : [...ids, id] })
}

/** The worst finding about it; what holds is told by silence here, except for lines. */
function RowStatus({ id }: { id: string }): JSX.Element | null {
  const status = useApp((s) => worstById(s.plan, s.study.results).get(id))
  const quiet = useApp((s) => status === 'pass' && !s.plan.lines.some((l) => l.id === id))
  return status && !quiet ? <StatusMark status={status} size={13} /> : null
}
