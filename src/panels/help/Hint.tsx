/** Three steps for somebody new: see a number move within a minute. Can be closed at any time, and stays closed. */
import { Button, CloseButton } from '@mantine/core'
import type { JSX } from 'react'
import { remember } from '../../state/memory'
import { app, useApp } from '../../state/store'
import css from './hint.module.css'

const steps = [
  {
    title: 'The blue skin is the room a fall needs',
    text: 'Whatever enters it is cut out in colour, with how far. The list on the right says what fails first.',
  },
  {
    title: 'Drag a stanchion',
    text: 'Take its head in the picture or on the tape below. It snaps from loop gap to loop gap, and every number follows. Ctrl+Z takes it back.',
  },
  {
    title: 'Click a finding',
    text: 'The picture flies there, and below the list stands why: the sum, the figures put in, where they come from.',
  },
]

export function Hint(): JSX.Element | null {
  const at = useApp((s) => s.hintStep)
  const step = at === null ? undefined : steps[at]
  if (at === null || !step) return null
  const close = (): void => {
    remember('hint', 'closed')
    app.setState({ hintStep: null })
  }
  const next = (): void => (at + 1 < steps.length ? app.setState({ hintStep: at + 1 }) : close())
  return (
    <section className={css.hint} aria-label="First steps">
      <div className={css.head}>
        <span className={css.count}>
          {at + 1} of {steps.length}
        </span>
        <CloseButton size="sm" aria-label="Close the first steps" onClick={close} />
      </div>
      <h2>{step.title}</h2>
      <p>{step.text}</p>
      <Button variant="filled" onClick={next}>
        {at + 1 < steps.length ? 'Next' : 'Done'}
      </Button>
    </section>
  )
}
