/** One plot large enough for the back row, and its files. */
import { Button, Modal } from '@mantine/core'
import type { JSX } from 'react'
import type { FallPlotKind } from '../../drawings/fall-plots'
import type { Dropped } from '../../state/fall/fall-store'
import { now } from '../../state/fall/player'
import { useApp } from '../../state/store'
import { exportPlot } from './export-plot'
import css from './fall.module.css'
import { PlotField, Reading } from './Plots'
import { plotKinds, plotOf } from './plot-input'

export function PlotDialog(props: { kind: FallPlotKind; dropped: Dropped; close: () => void }): JSX.Element {
  const { kind, dropped, close } = props
  const units = useApp((s) => s.units)
  const name = plotKinds.find((p) => p.kind === kind)?.name ?? ''
  const file = (type: 'svg' | 'png') => (): void => {
    void exportPlot({ ...plotOf(kind, dropped, units), cursor: now() }, `fall-${kind}`, type)
  }
  return (
    <Modal opened onClose={close} title={name} size="90%">
      <div className={css.large} style={{ height: '60vh' }}>
        <PlotField kind={kind} dropped={dropped} textSize={18} />
      </div>
      <div className={css.buttons}>
        <b>
          <Reading kind={kind} dropped={dropped} />
        </b>
        <span className={css.spread} />
        <Button variant="default" onClick={file('svg')}>
          Export SVG
        </Button>
        <Button variant="default" onClick={file('png')}>
          Export PNG
        </Button>
      </div>
    </Modal>
  )
}
