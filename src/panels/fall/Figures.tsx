/** Both methods side by side, which of them governs, and the stack of distances beside what is there. */
import { type JSX, useMemo } from 'react'
import { SvgPicture } from '../../drawings/SvgPicture'
import { stack } from '../../drawings/stack'
import { formatQuantity } from '../../plan/units'
import type { Dropped } from '../../state/fall/fall-store'
import { useApp } from '../../state/store'
import type { DroppedWorker } from '../../study/drop'
import type { Fall } from '../../study/results'
import css from './fall.module.css'

type Figure = keyof Pick<
  Fall,
  | 'freeFall'
  | 'lineDrop'
  | 'connectorExtension'
  | 'totalFall'
  | 'clearance'
  | 'arrestForce'
  | 'tension'
  | 'absorberExtension'
>

const rows: [Figure, string, 'm' | 'N'][] = [
  ['freeFall', 'Free fall', 'm'],
  ['lineDrop', 'Line drop', 'm'],
  ['connectorExtension', 'Connector extension', 'm'],
  ['totalFall', 'Total fall', 'm'],
  ['clearance', 'Room needed', 'm'],
  ['arrestForce', 'Force on the body', 'N'],
  ['tension', 'Greatest tension', 'N'],
  ['absorberExtension', 'Line absorber', 'm'],
]

export function Figures({ dropped, worker }: { dropped: Dropped; worker: DroppedWorker }): JSX.Element {
  return (
    <>
      <h3>{dropped.study.workers.length > 1 ? `${worker.name}: by both methods` : 'By both methods'}</h3>
      <Table worker={worker} />
      <p className={css.quiet}>
        The greater figure governs, in bold. In 42 dynamic fall tests a static method with giving anchorages
        told most tensions too high, at most by 17 % (Galy and Lan 2018). The body in the picture is drawn
        without the harness stretch; what it strikes is found with it.
      </p>
      <Ends dropped={dropped} />
      <Stack worker={worker} />
    </>
  )
}

function Table({ worker }: { worker: DroppedWorker }): JSX.Element {
  return (
    <table className={css.figures}>
      <thead>
        <tr>
          <th>First swing</th>
          <td>energy</td>
          <td>time</td>
        </tr>
      </thead>
      <tbody>
        {rows.map(([figure, name, unit]) => (
          <Row key={figure} name={name} unit={unit} figure={figure} worker={worker} />
        ))}
      </tbody>
    </table>
  )
}

function Row(props: { name: string; unit: string; figure: Figure; worker: DroppedWorker }): JSX.Element {
  const units = useApp((s) => s.units)
  const energy = props.worker.energy?.[props.figure] ?? null
  const time = props.worker.dynamic[props.figure]
  const more = energy === null || time === null ? 0 : energy - time
  return (
    <tr data-figure={props.figure}>
      <th>{props.name}</th>
      <td data-governs={more > 0}>{formatQuantity(energy, props.unit, units)}</td>
      <td data-governs={more < 0} data-value={time ?? undefined}>
        {formatQuantity(time, props.unit, units)}
      </td>
    </tr>
  )
}

/** Beside figures of a fall that has no end of its own a reader must see that they are no more than a bound. */
const Ends = ({ dropped }: { dropped: Dropped }): JSX.Element | null =>
  dropped.study.ends ? (
    <p className={css.fails}>
      These figures are as if nothing gave way; the fall ends before: {dropped.study.ends.why}.
    </p>
  ) : null

function Stack({ worker }: { worker: DroppedWorker }): JSX.Element | null {
  const units = useApp((s) => s.units)
  const picture = useMemo(
    () => (worker.stack ? stack({ ...worker.stack, units }, 310, 250) : null),
    [worker.stack, units],
  )
  return picture ? (
    <>
      <h3>Room needed, and room there</h3>
      <div data-testid="stack">
        <SvgPicture picture={picture} />
      </div>
    </>
  ) : null
}
