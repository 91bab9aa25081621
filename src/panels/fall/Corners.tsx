/** Which ends of the uncertain figures this fall is computed with, in plain words. */
import type { JSX } from 'react'
import { setCorner } from '../../state/fall/drop-actions'
import { useFall } from '../../state/fall/fall-store'
import { ChoiceField } from '../fields/ChoiceField'
import css from './fall.module.css'

const lines = [
  { value: 'soft', label: 'soft: needs the most room' },
  { value: 'stiff', label: 'stiff: pulls the hardest' },
]
const connectors = [
  { value: 'low', label: 'low: tears longest' },
  { value: 'high', label: 'high: pulls hardest' },
]
const grips = [
  { value: 'sliding', label: 'runs through freely' },
  { value: 'held', label: 'is held, does not slip' },
]

export function Corners(): JSX.Element {
  const corner = useFall((s) => s.corner)
  return (
    <>
      <h3>Which end of the figures</h3>
      <p className={css.quiet}>
        Parts give a least and a greatest figure. A soft line has the least rope stiffness, absorber force and
        pretension; a stiff one the greatest.
      </p>
      <ChoiceField
        label="Line"
        value={corner.line}
        choices={lines}
        onTake={(v) => setCorner({ line: v === 'stiff' ? 'stiff' : 'soft' })}
      />
      <ChoiceField
        label="Connector’s force"
        value={corner.connector}
        choices={connectors}
        onTake={(v) => setCorner({ connector: v === 'high' ? 'high' : 'low' })}
      />
      <ChoiceField
        label="Rope at the posts"
        value={corner.grip}
        choices={grips}
        onTake={(v) => setCorner({ grip: v === 'held' ? 'held' : 'sliding' })}
      />
    </>
  )
}
