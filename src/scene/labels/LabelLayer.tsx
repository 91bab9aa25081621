/** The sheet of texts over the canvas: plain HTML, so that type is as crisp as anywhere else in the window. */
import { memo, useLayoutEffect, useRef } from 'react'
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
  const element = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => seats.take(label, element.current!), [label])
  return (
    <div ref={element} className={`${styles.label} ${styles[label.tone]}`} data-label={label.id}>
      {label.text}
    </div>
  )
})
