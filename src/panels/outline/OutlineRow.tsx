import { ChevronDown, ChevronRight, Eye, EyeOff, Lock, LockOpen } from 'lucide-react'
import type { JSX, KeyboardEvent, MouseEvent } from 'react'
import { worstById } from '../../state/derived'
import { hasRef, sameRef } from '../../state/refs'
import { app, useApp } from '../../state/store'
import { StatusMark } from '../words/StatusMark'
import css from './outline.module.css'
import type { TreeRow } from './tree'

export function OutlineRow(props: {
  row: TreeRow
  folded: boolean
  fold: (key: string) => void
  onSelect: (add: boolean) => void
  onHover: (on: boolean) => void
  onFly: () => void
}): JSX.Element {
  const { row } = props
  const selected = useApp((s) => hasRef(s.selection, row.ref))
  const hovered = useApp((s) => sameRef(s.hover, row.ref))
  const hidden = useApp((s) => s.hidden.includes(row.ref.id))
  const locked = useApp((s) => s.locked.includes(row.ref.id))
  const click = (e: MouseEvent): void => props.onSelect(e.ctrlKey || e.metaKey || e.shiftKey)
  const key = (e: KeyboardEvent): void => {
    if (e.target !== e.currentTarget) return
    if (e.key === 'Enter') props.onFly()
    if (e.key === ' ') props.onSelect(e.ctrlKey || e.metaKey)
    if (e.key === ' ' || e.key === 'Enter') e.preventDefault()
    if (
      row.folds &&
      (e.key === 'ArrowLeft') !== props.folded &&
      (e.key === 'ArrowLeft' || e.key === 'ArrowRight')
    ) {
      e.stopPropagation()
      props.fold(row.key)
    }
  }
  return (
    <div
      className={css.row}
      role="treeitem"
      tabIndex={0}
      aria-selected={selected}
      aria-level={row.depth}
      aria-expanded={row.folds ? !props.folded : undefined}
      data-ref={row.key}
      data-hover={hovered}
      data-hidden={hidden}
      data-locked={locked}
      style={{ '--depth': row.depth - 1 } as React.CSSProperties}
      onClick={click}
      onDoubleClick={props.onFly}
      onKeyDown={key}
      onFocus={() => props.onHover(true)}
      onBlur={() => props.onHover(false)}
      onMouseEnter={() => props.onHover(true)}
      onMouseLeave={() => props.onHover(false)}
      onContextMenu={() => {
        if (!selected) props.onSelect(false)
      }}
    >
      {row.folds ? <Twist folded={props.folded} onClick={() => props.fold(row.key)} /> : null}
      <span className={css.name}>{row.name}</span>
      <span className={css.detail}>{row.detail}</span>
      <RowTools id={row.ref.id} hidden={hidden} locked={locked} />
      <RowStatus id={row.ref.id} />
    </div>
  )
}

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
