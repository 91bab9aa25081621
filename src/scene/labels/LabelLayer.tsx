/** The sheet of texts over the canvas: plain HTML, so that type is as crisp as anywhere else in the window. */
import { memo, useLayoutEffect, useRef } from 'react'
import { refKey } from '../../state/refs'
import { typeBeside } from '../../state/typed/typing'
import styles from './labels.module.css'
import { notes } from './notes'
import { type Label, labels } from './registry'
import { seats } from './seats'

export function LabelLayer() {
  const all = labels((s) => s.all)
  return (
    <div className={styles.layer} data-scene-labels="">
      {[...all.values()].map((label) => (
        <LabelText key={label.id} label={label} />
      ))}
      <Notes />
    </div>
  )
}

function Notes() {
  const all = notes((s) => s.all)
  if (all.size === 0) return null
  return <div className={styles.notes}>{[...all.values()].join(' · ')}</div>
}

const LabelText = memo(function LabelText({ label }: { label: Label }) {
  const element = useRef<HTMLDivElement & HTMLButtonElement>(null)
  useLayoutEffect(() => seats.take(label, element.current!), [label])
  const look = { className: `${styles.label} ${styles[label.tone]}`, 'data-label': label.id }
  const { opens } = label
  if (!opens)
    return (
      <div ref={element} {...look}>
        {label.text}
      </div>
    )
  return (
    <button
      ref={element}
      type="button"
      {...look}
      data-opens={refKey(opens)}
      title="Type it (Enter)"
      onClick={(e) => typeBeside(opens, placeOf(e.currentTarget))}
    >
      {label.text}
    </button>
  )
})

const placeOf = (element: HTMLElement): { x: number; y: number } => {
  const { left: x, top: y } = element.getBoundingClientRect()
  return { x, y }
}
