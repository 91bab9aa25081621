/**
 * The figures of one thing, typed beside it. Enter takes a figure and closes, Tab goes on to the next one; Escape, or a
 * press elsewhere, closes. What is refused stays open with the word why.
 */
import { type FocusEvent, type JSX, type KeyboardEvent, useLayoutEffect, useMemo, useRef } from 'react'
import { refKey } from '../../state/refs'
import { app, useApp } from '../../state/store'
import { typedValues } from '../../state/typed/values'
import type { Typing } from '../../state/window-state'
import { QuantityField } from '../fields/QuantityField'
import { refName } from '../words/status'
import css from './in-place.module.css'

export function InPlace(): JSX.Element | null {
  const typing = useApp((s) => s.typing)
  return typing ? <Box key={`${refKey(typing.ref)} ${typing.point}`} typing={typing} /> : null
}

const close = (): void => app.setState({ typing: null })

function Box({ typing }: { typing: Typing }): JSX.Element {
  const plan = useApp((s) => s.plan)
  const { ref, point } = typing
  const values = typedValues(plan, ref, point)
  const at = useMemo(() => typing.at ?? seenAt(refKey(typing.ref)), [typing])
  const box = useFocusInside()
  const name = [refName(plan, ref), pointName(ref.kind, point)].filter(Boolean).join(', ')
  return (
    <div
      ref={box}
      className={css.box}
      role="dialog"
      aria-label={`${name}: type its place`}
      data-testid="in-place"
      style={{ '--x': `${at.x}px`, '--y': `${at.y}px`, '--rows': values.length } as React.CSSProperties}
      onKeyDown={onKey}
      onBlur={leave}
    >
      <div className={css.name}>{name}</div>
      {values.map((v) => (
        <QuantityField
          key={v.label}
          label={v.label}
          unit={v.unit}
          value={v.value}
          {...(v.unit === 'm' ? { least: -1e5, most: 1e5 } : {})}
          onTake={v.take}
          onDone={close}
        />
      ))}
    </div>
  )
}

/** Begins in the first field, and gives the focus back where it was. */
function useFocusInside() {
  const box = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    const before = document.activeElement
    box.current?.querySelector('input')?.focus({ preventScroll: true })
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus({ preventScroll: true })
    }
  }, [])
  return box
}

const pointName = (kind: string, point: number | undefined): string =>
  point === undefined ? '' : kind === 'deck' ? `corner ${point + 1}` : point === 0 ? 'start' : 'end'

function onKey(e: KeyboardEvent): void {
  e.stopPropagation()
  if (e.key === 'Escape') close()
}

/** The field takes what was typed when it is left; only then is it known whether that is refused. */
function leave(e: FocusEvent<HTMLDivElement>): void {
  const box = e.currentTarget
  if (box.contains(e.relatedTarget)) return
  requestAnimationFrame(() => {
    if (
      box.isConnected &&
      !box.contains(document.activeElement) &&
      !box.querySelector('[aria-invalid="true"]')
    )
      close()
  })
}

/** Beside the thing's figure or handle where one is seen, else in the middle of the picture. */
function seenAt(key: string): { x: number; y: number } {
  const beside = document.querySelectorAll(
    `[data-opens="${CSS.escape(key)}"], [data-handle="${CSS.escape(key)}"]`,
  )
  const seen = [...beside].find((e) => e.checkVisibility({ visibilityProperty: true }))
  const box = (seen ?? document.querySelector('main'))?.getBoundingClientRect()
  if (!box) return { x: 0, y: 0 }
  return seen ? { x: box.left, y: box.top } : { x: box.left + box.width / 2, y: box.top + box.height / 3 }
}
