/** One or two inputs as axes and the least margin at every point. */
import { Checkbox, NativeSelect } from '@mantine/core'
import { type JSX, useState } from 'react'
import { SvgPicture } from '../../drawings/SvgPicture'
import type { Line } from '../../plan/types'
import { formatQuantity } from '../../plan/units'
import { runExplore, useFind } from '../../state/find/find-client'
import { useApp } from '../../state/store'
import {
  AXES,
  type Axis,
  type AxisInput,
  axisValue,
  type ExplorePoint,
  type ExploreTask,
} from '../../study/explore/explore'
import { ruleWord } from '../findings/words'
import css from './find.module.css'
import { marginPlot } from './pictures'
import { Working } from './Working'

const NONE = 'none'
const data = (Object.keys(AXES) as AxisInput[]).map((value) => ({ value, label: AXES[value].label }))

/** From half to half as much again of what the input is now; a temperature by 30 degrees either way. */
function axisAround(now: number, input: AxisInput, steps: number): Axis {
  if (input === 'temperature-high') return { input, from: now - 30, to: now + 30, steps }
  return { input, from: 0.5 * now, to: 1.5 * now, steps }
}

export function ExplorePage({ line }: { line: Line }): JSX.Element {
  const plan = useApp((s) => s.plan)
  const [x, setX] = useState<AxisInput>('pretension')
  const [y, setY] = useState<AxisInput | typeof NONE>(NONE)
  const [obstacles, setObstacles] = useState(false)
  const explored = useFind((s) => (s.explore?.task.line === line.id ? s.explore : null))
  const crew = plan.workers.some((w) => w.line === line.id)
  const steps = y === NONE ? 21 : 11
  const start = (): void => {
    const axis = (input: AxisInput): Axis => axisAround(axisValue(plan, line.id, input), input, steps)
    const second = y === NONE || y === x ? {} : { y: axis(y) }
    void runExplore({ plan, line: line.id, x: axis(x), ...second, obstacles })
  }
  return (
    <div className={css.page}>
      <div className={css.row}>
        <NativeSelect
          label="Along"
          value={x}
          data={data}
          onChange={(e) => setX(e.currentTarget.value as AxisInput)}
        />
        <NativeSelect
          label="Against"
          value={y}
          data={[{ value: NONE, label: 'nothing' }, ...data.filter((d) => d.value !== x)]}
          onChange={(e) => setY(e.currentTarget.value as AxisInput | typeof NONE)}
        />
        <Checkbox
          label="Room below too (slower)"
          checked={obstacles}
          onChange={(e) => setObstacles(e.currentTarget.checked)}
        />
      </div>
      <Working kind="explore" start="Compute the margins" disabled={!crew} onStart={start} />
      <p className={css.quiet}>
        By the energy method, at the line’s own grip; rules about loops and tie-back feet are left out.
      </p>
      {explored ? <Result task={explored.task} points={explored.points} /> : null}
    </div>
  )
}

function Result({ task, points }: { task: ExploreTask; points: ExplorePoint[] }): JSX.Element {
  const units = useApp((s) => s.units)
  const { label, unit } = AXES[task.x.input]
  if (task.y) return <Grid task={task} points={points} />
  return (
    <section aria-label="Margins" data-testid="explored">
      <SvgPicture picture={marginPlot(label, unit, points, units)} />
      <p className={css.claim}>{edgeWords(points, (v) => formatQuantity(v, unit, units))}</p>
    </section>
  )
}

/** Where passing begins or ends along an axis, between two computed points. */
function edgeWords(points: ExplorePoint[], say: (v: number) => string): string {
  const edges = points.slice(1).flatMap((p, i) => {
    const before = points[i]!
    if (p.passes === before.passes) return []
    const stopping = p.passes ? before : p
    const why = stopping.rule ? ` (${ruleWord[stopping.rule] ?? stopping.rule})` : ''
    return [`${p.passes ? 'begins' : 'ends'} between ${say(before.x)} and ${say(p.x)}${why}`]
  })
  if (edges.length > 0) return `Passing ${edges.join('; ')}.`
  return points[0]?.passes ? 'Every point passes.' : 'No point passes.'
}

/** The least margin as a shade and a number: what fails has a bar as well as its colour. */
function Grid({ task, points }: { task: ExploreTask; points: ExplorePoint[] }): JSX.Element {
  const units = useApp((s) => s.units)
  const xs = [...new Set(points.map((p) => p.x))]
  const ys = [...new Set(points.map((p) => p.y!))]
  const x = AXES[task.x.input]
  const y = AXES[task.y!.input]
  return (
    <section aria-label="Margins" data-testid="explored" style={{ overflowX: 'auto' }}>
      <p className={css.quiet}>
        Least margin, % of its limit. Across: {x.label}. Down: {y.label}.
      </p>
      <table className={css.table}>
        <thead>
          <tr>
            <th />
            {xs.map((v) => (
              <th key={v}>{formatQuantity(v, x.unit, units)}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {ys.map((v) => (
            <tr key={v}>
              <th>{formatQuantity(v, y.unit, units)}</th>
              {points
                .filter((p) => p.y === v)
                .map((p) => (
                  <Cell key={p.x} point={p} />
                ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

/** Whole numbers; near the limit a digit more, so that no failure reads as 0. */
const percent = (v: number): string => v.toFixed(Math.abs(v) < 1 ? 1 : 0)

function Cell({ point }: { point: ExplorePoint }): JSX.Element {
  const colour = point.passes ? 'var(--holds)' : 'var(--fails)'
  const depth = Math.round(12 + 50 * Math.min(1, Math.abs(point.margin ?? 0)))
  const rule = point.rule ? (ruleWord[point.rule] ?? point.rule) : 'not known'
  return (
    <td
      title={`${rule}: ${point.passes ? 'holds' : point.margin === null ? 'not known' : 'fails'}`}
      style={{
        background: `color-mix(in srgb, ${colour} ${depth}%, transparent)`,
        ...(point.passes ? {} : { borderLeft: `3px solid ${colour}` }),
      }}
    >
      {point.margin === null ? 'not known' : percent(100 * point.margin)}
    </td>
  )
}
