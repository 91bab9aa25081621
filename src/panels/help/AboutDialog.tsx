import type { JSX } from 'react'
import { DialogFrame } from '../shell/DialogFrame'
import { cautionText } from '../words/Caution'
import css from './help.module.css'

/** What the program computes and what it leaves to people. */
export default function AboutDialog(): JSX.Element {
  return (
    <DialogFrame title="What this does and does not do">
      <div className={css.about}>
        <p>
          Fallroom lays out temporary horizontal lifelines on stanchions along girders, checks them rule by
          rule, and draws the room that a fall needs under them.
        </p>
        <h3>What it computes</h3>
        <p>
          The installed rope as an exact elastic catenary, falls by energy at every end of every uncertain
          figure, falls in time, the forces in stanchions, tie-backs and loops, and the gap to everything
          below. Every number has its limit, its margin and its source; a number that could not be computed
          reads “not known”.
        </p>
        <h3>What it does not</h3>
        <p>
          It approves nothing: only a qualified person does. It does not check the girder itself, pull-out of
          loops from the concrete, or the parts beyond the figures that the plan gives for them. It sends
          nothing anywhere.
        </p>
        <p>{cautionText}</p>
      </div>
    </DialogFrame>
  )
}
