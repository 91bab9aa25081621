/** The open plan against another one, or another state of it: what moved, which findings changed. */
import { Button, Checkbox } from '@mantine/core'
import { type JSX, useState } from 'react'
import { getDesk } from '../../desk/desk'
import { girderFrame, topPoint } from '../../geometry/girder'
import { headHeight } from '../../geometry/line'
import { type Comparison, changeText, findingChangeText, governingText } from '../../handover/compare'
import { readPlan } from '../../plan/read'
import type { Plan, Vec3 } from '../../plan/types'
import { select, setGhost } from '../../state/actions'
import { tell } from '../../state/ask'
import { chooseAndFly } from '../../state/findings'
import { modelsForStudy } from '../../state/models/model-store'
import { refOfId } from '../../state/refs'
import { app, useApp } from '../../state/store'
import css from './handover.module.css'
import { making, useMaking } from './making'

interface Compared {
  of: Plan
  other: Plan
  name: string
  comparison: Comparison
}

export function Compare(): JSX.Element {
  const plan = useApp((s) => s.plan)
  const busy = useMaking((s) => s.at !== null)
  const [found, setFound] = useState<Compared | null>(null)
  const choose = async (): Promise<void> => {
    const other = await pickPlan()
    if (!other) return
    const of = app.getState().plan
    const comparison = await making('studying both plans', (api, told) =>
      api.compare(other.plan, of, modelsForStudy(), told),
    )
    if (comparison) setFound({ of, other: other.plan, name: other.name, comparison })
  }
  return (
    <>
      <p className={css.quiet}>
        Choose an earlier state of this plan, or another plan. The open plan is the later one.
      </p>
      <Button disabled={busy} onClick={() => void choose()}>
        Choose a plan to compare with
      </Button>
      {found ? <Found found={found} stale={found.of !== plan} /> : null}
    </>
  )
}

async function pickPlan(): Promise<{ plan: Plan; name: string } | null> {
  const picked = await getDesk().pickFile('any')
  if (!picked.ok) {
    if (picked.code !== 'cancelled') tell(picked.why, 'fails')
    return null
  }
  const read = readPlan(new TextDecoder().decode(picked.value.bytes))
  if (read.ok) return { plan: read.plan, name: picked.value.name }
  const [first] = read.faults
  tell(
    `${picked.value.name} is no plan: ${first ? `${first.path}: ${first.message}` : 'it could not be read'}`,
    'fails',
  )
  return null
}

function Found({ found, stale }: { found: Compared; stale: boolean }): JSX.Element {
  const units = useApp((s) => s.units)
  const { comparison: c, of } = found
  const inPackage = useMaking((s) => s.compareWith?.plan === found.other)
  const nothing = c.changes.length + c.governing.length + c.findings.length === 0
  return (
    <div data-testid="comparison">
      <h3>Against {found.name}</h3>
      {stale ? (
        <p className={css.state}>The plan has changed since; choose again to compare it as it is now.</p>
      ) : null}
      {nothing ? <p>Nothing that counts differs.</p> : null}
      <Checkbox
        size="xs"
        label="A page about this in the calculation package"
        checked={inPackage}
        onChange={(e) =>
          useMaking.setState({
            compareWith: e.currentTarget.checked ? { plan: found.other, name: found.name } : null,
          })
        }
      />
      <GhostChoice other={found.other} />
      {c.changes.length > 0 ? <h3>What moved or changed</h3> : null}
      <ul className={css.log}>
        {c.changes.map((x) => (
          <li key={`${x.what} ${x.of} ${x.id}`}>
            <Linked text={changeText(x, of, units)} go={() => select(refOfId(app.getState().plan, x.id))} />
          </li>
        ))}
      </ul>
      {c.governing.length > 0 ? <h3>Governing numbers</h3> : null}
      <ul className={css.log}>
        {c.governing.map((x) => (
          <li key={`${x.line} ${x.figure}`}>{governingText(x, of, units)}</li>
        ))}
      </ul>
      {c.findings.length > 0 ? <h3>Findings</h3> : null}
      <ul className={css.log}>
        {c.findings.map((x) => (
          <li key={`${x.rule} ${x.subject}`}>
            <Linked
              text={findingChangeText(x, of, units)}
              go={() => chooseAndFly({ rule: x.rule, subject: x.subject })}
            />
          </li>
        ))}
      </ul>
    </div>
  )
}

const Linked = ({ text, go }: { text: string; go: () => void }): JSX.Element => (
  <button type="button" className={css.link} onClick={go}>
    {text}
  </button>
)

/** The other plan's rope as a ghost in scene and tape, one line at a time. */
function GhostChoice({ other }: { other: Plan }): JSX.Element {
  const [shown, setShown] = useState('')
  const show = (id: string): void => {
    setShown(id)
    const points = headsOf(other, id)
    setGhost(points.length > 1 ? { points, closed: false, text: 'as it was' } : null)
  }
  return (
    <select
      className={css.choose}
      aria-label="Line of the other plan shown as a ghost"
      value={shown}
      onChange={(e) => show(e.currentTarget.value)}
    >
      <option value="">No ghost of the other plan</option>
      {other.lines.map((l) => (
        <option key={l.id} value={l.id}>
          Ghost: {l.name || l.id}
        </option>
      ))}
    </select>
  )
}

function headsOf(plan: Plan, id: string): Vec3[] {
  const line = plan.lines.find((l) => l.id === id)
  const girder = plan.girders.find((g) => g.id === line?.girder)
  if (!line || !girder) return []
  const frame = girderFrame(girder)
  return line.stanchions.map((s): Vec3 => {
    const [x, y, z] = topPoint(frame, s.station, s.offset)
    return [x, y, z + (headHeight(plan, s) ?? 0)]
  })
}
