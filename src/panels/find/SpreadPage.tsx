/** How clearance and tension spread where the uncertain figures vary, and which of them matter. */
import { NativeSelect, NumberInput } from '@mantine/core'
import { type JSX, useState } from 'react'
import { SvgPicture } from '../../drawings/SvgPicture'
import { spreadPlot } from '../../drawings/spread-plot'
import { screenTheme } from '../../drawings/theme'
import type { Line } from '../../plan/types'
import { formatQuantity } from '../../plan/units'
import { runSpread, useFind } from '../../state/find/find-client'
import { useApp } from '../../state/store'
import { USUAL_TOLERANCES } from '../../study/spread/inputs'
import type { Distribution, SpreadResult } from '../../study/spread/types'
import { ruleWord } from '../findings/words'
import css from './find.module.css'
import { Working } from './Working'

export function SpreadPage({ line }: { line: Line }): JSX.Element {
  const plan = useApp((s) => s.plan)
  const [samples, setSamples] = useState('1000')
  const [seed, setSeed] = useState(1)
  const units = useApp((s) => s.units)
  const spread = useFind((s) => (s.spread?.line === line.id ? s.spread : null))
  const crew = plan.workers.some((w) => w.line === line.id)
  const start = (): void => void runSpread({ plan, line: line.id, samples: Number(samples), seed })
  return (
    <div className={css.page}>
      <p className={css.quiet}>
        Pretension, rope stiffness, temperature, absorber and connector forces vary over the ranges that the
        plan gives; mass by {100 * USUAL_TOLERANCES.mass} % either way, D-ring height by{' '}
        {formatQuantity(USUAL_TOLERANCES.dRingHeight, 'm', units)}, stations by{' '}
        {formatQuantity(USUAL_TOLERANCES.station, 'm', units)}: assumptions of this page.
      </p>
      <div className={css.row}>
        <NativeSelect
          label="Samples"
          value={samples}
          data={['200', '1000', '10000']}
          onChange={(e) => setSamples(e.currentTarget.value)}
        />
        <NumberInput
          label="Seed"
          value={seed}
          min={0}
          step={1}
          allowDecimal={false}
          onChange={(v) => setSeed(Number(v) || 0)}
        />
      </div>
      <Working kind="spread" start="Compute the spread" disabled={!crew} onStart={start} />
      {crew ? null : <p className={css.quiet}>Nobody is on this line.</p>}
      {spread ? <Result result={spread.result} stale={spread.plan !== plan} /> : null}
    </div>
  )
}

function Result({ result, stale }: { result: SpreadResult; stale: boolean }): JSX.Element {
  return (
    <section aria-label="Spread" data-testid="spread">
      {stale ? <p className={css.claim}>The plan has changed since this was computed.</p> : null}
      <div className={css.pictures}>
        <Figure name="Clearance needed" unit="m" of={result.clearance} />
        <Figure name="Tension" unit="N" of={result.tension} />
      </div>
      <Rules result={result} />
      <p className={css.quiet}>
        {result.samples} samples, seed {result.seed}
        {result.failed > 0 ? `, ${result.failed} could not be computed` : ''}. {result.method} Room below:
        more clearance than the corner result and its least gap leave.
      </p>
    </section>
  )
}

/** Rules that some sample fails with their shares, and the names of those that none does. */
function Rules({ result }: { result: SpreadResult }): JSX.Element {
  const failed = result.rules.filter((r) => r.share > 0).sort((a, b) => b.share - a.share)
  const held = result.rules.filter((r) => r.share === 0).map((r) => ruleWord[r.rule] ?? r.rule)
  const room = result.room === null ? 'Nothing below limits the clearance. ' : ''
  return (
    <>
      {failed.length > 0 ? (
        <table className={css.table}>
          <thead>
            <tr>
              <th>Rule</th>
              <th>Share of samples that fail it</th>
            </tr>
          </thead>
          <tbody>
            {failed.map((r) => (
              <tr key={r.rule}>
                <td>{ruleWord[r.rule] ?? r.rule}</td>
                <td>{(100 * r.share).toFixed(r.share < 0.001 ? 2 : 1)} %</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      <p className={css.claim}>
        {room}
        {held.length > 0 ? `No sample fails: ${held.join(', ')}.` : ''}
      </p>
    </>
  )
}

function Figure({ name, unit, of }: { name: string; unit: string; of: Distribution }): JSX.Element {
  const units = useApp((s) => s.units)
  const say = (v: number | null): string => formatQuantity(v, unit, units)
  const first = of.matters.filter((m) => m.share > 0.005).slice(0, 5)
  return (
    <figure style={{ margin: 0, maxWidth: 400 }}>
      <SvgPicture picture={spreadPlot({ name, unit, of, units }, 400, 220, screenTheme)} />
      <figcaption className={css.quiet}>
        {of.quantiles.map((q) => `${100 * q.share} % below ${say(q.value)}`).join(', ')}. Corner by energy:{' '}
        {say(of.corner)}; {(100 * of.beyond).toFixed(1)} % of samples lie beyond it. What matters, share of
        variance:{' '}
        {first.map((m) => `${m.label} ${(100 * m.share).toFixed(0)} %`).join(', ') || 'nothing stands out'}.
      </figcaption>
    </figure>
  )
}
