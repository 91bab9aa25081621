/** Small changes that could mend a finding, by what the rule is about; each makes a new plan. */
import { freshId } from '../../plan/ids'
import { partLibrary } from '../../plan/library'
import type { Line, Part, Plan, Stanchion } from '../../plan/types'
import { say } from '../../rules/words'
import { feetAt, type Places, placesOf } from '../find/places'
import type { Finding } from '../results'

export interface Change {
  label: string
  /** How much it takes, for ranking: 1 is a foot or stanchion by one loop; parts and stanchions cost more. */
  effort: number
  plan: Plan
}

type Kind = 'move' | 'add' | 'feet' | 'connector' | 'absorber' | 'pretension' | 'plate'

const STRENGTH: Kind[] = ['feet', 'absorber', 'pretension', 'connector', 'add']

/** Which kinds of change bear on a rule; a rule that is not here is mended by no change of the line. */
const KINDS: Record<string, Kind[]> = {
  'anchor-spacing': ['move', 'add'],
  'obstacle-gap': ['move', 'add', 'pretension', 'connector', 'absorber'],
  'end-tie-back': ['feet'],
  'tie-back-angle': ['feet', 'move'],
  'tie-back-distance': ['feet', 'move'],
  'tie-back-side': ['feet'],
  'tie-back-loops-distinct': ['feet'],
  'tie-back-loops-adjacent': ['feet'],
  'strap-length': ['feet'],
  'tie-back-strength': STRENGTH,
  'loops-engaged': ['move'],
  'loops-beside': ['move'],
  'bolt-edge': ['plate'],
  'loop-strength': ['move', ...STRENGTH],
  'stanchion-strength': STRENGTH,
  'wire-rope-strength': STRENGTH,
  'hardware-strength': STRENGTH,
  'absorber-runs-out': STRENGTH,
  'rope-held': ['connector', 'pretension', 'add', 'move'],
  'eye-offset': ['pretension', 'absorber'],
  'free-fall': ['connector'],
  'arrest-force': ['connector'],
  deceleration: ['connector'],
  'connector-runs-out': ['connector'],
  'worker-mass': ['connector'],
  'time-method': ['absorber', 'pretension', 'connector'],
}

/** Whether any small change bears on a rule. */
export const mendable = (rule: string): boolean => KINDS[rule] !== undefined

/** The line a finding is about: its own, or the one whose stanchion, tie-back or worker it names. */
export function lineOfFinding(plan: Plan, f: Pick<Finding, 'subject' | 'line'>): Line | undefined {
  const id = f.line ?? plan.workers.find((w) => w.id === f.subject)?.line ?? f.subject
  if (plan.obstacles.some((o) => o.id === f.subject) && f.line === undefined) return plan.lines[0]
  const on = (l: Line): boolean => [...l.stanchions, ...l.tieBacks].some((x) => x.id === f.subject)
  return plan.lines.find((l) => l.id === id) ?? plan.lines.find(on)
}

interface On {
  plan: Plan
  line: Line
  places: Places | null
  finding: Pick<Finding, 'rule' | 'subject' | 'line'>
}

const withLine = (plan: Plan, line: Line): Plan => ({
  ...plan,
  lines: plan.lines.map((l) => (l.id === line.id ? line : l)),
})

const withStanchions = (on: On, stanchions: Stanchion[], tieBacks = on.line.tieBacks): Plan =>
  withLine(on.plan, { ...on.line, stanchions, tieBacks })

/** Stanchions that a move should touch: the one named, else all. */
const movable = (on: On): number[] => {
  const index = on.line.stanchions.findIndex((s) => s.id === on.finding.subject)
  const tied = on.line.tieBacks.find((t) => t.id === on.finding.subject)
  if (tied) return [on.line.stanchions.findIndex((s) => s.id === tied.stanchion)]
  return index >= 0 ? [index] : on.line.stanchions.map((_, i) => i)
}

function moves(on: On): Change[] {
  const { places, line, plan } = on
  if (!places) return []
  return movable(on).flatMap((i) =>
    [-3, -2, -1, 1, 2, 3].flatMap((by) => {
      const s = line.stanchions[i]!
      const here = places.stations.reduce(
        (best, x, k) => (Math.abs(x - s.station) < Math.abs(places.stations[best]! - s.station) ? k : best),
        0,
      )
      const off = Math.abs(places.stations[here]! - s.station) > 1e-3
      const station = places.stations[here + (off ? by - Math.sign(by) : by)]
      const between =
        station !== undefined &&
        station > (line.stanchions[i - 1]?.station ?? Number.NEGATIVE_INFINITY) + 0.1 &&
        station < (line.stanchions[i + 1]?.station ?? Number.POSITIVE_INFINITY) - 0.1
      if (station === undefined || !between || Math.abs(station - s.station) < 1e-6) return []
      const stanchions = line.stanchions.map((x, k) => (k === i ? { ...x, station } : x))
      const label = `Move stanchion ${s.id} from ${say(s.station, 'm', plan.units)} to ${say(station, 'm', plan.units)}`
      const ended = i === 0 || i === line.stanchions.length - 1
      const moved = withStanchions(on, stanchions)
      const tied = ended ? refooted({ ...on, plan: moved, line: { ...line, stanchions } }, i, 0) : moved
      return [{ label, effort: Math.abs(by) + (ended ? 0.5 : 0), plan: tied ?? moved }]
    }),
  )
}

/** The line with the tie-back of an end on its `rank`-th best feet; null where there are none. */
function refooted(on: On, index: number, rank: number): Plan | null {
  const { places, line, plan } = on
  if (!places) return null
  const post = line.stanchions[index]!
  const gap = places.stations.findIndex((x) => Math.abs(x - post.station) < 0.16)
  const at = { ...places, stations: places.stations.map((x, k) => (k === gap ? post.station : x)) }
  const feet = gap < 0 ? undefined : feetAt(plan, line, at, gap, index === 0 ? -1 : 1).feet[rank]
  if (!feet) return null
  const have = line.tieBacks.find((t) => t.stanchion === post.id)
  const part = have?.part ?? line.tieBacks[0]?.part ?? plan.parts.find((p) => p.kind === 'tie-back')?.id
  if (part === undefined) return null
  const made = { id: have?.id ?? freshId(plan, 'T'), stanchion: post.id, part, ...feet }
  const tieBacks = have ? line.tieBacks.map((t) => (t === have ? made : t)) : [...line.tieBacks, made]
  return withLine(plan, { ...line, tieBacks })
}

function feet(on: On): Change[] {
  const last = on.line.stanchions.length - 1
  const ends = movable(on).filter((i) => i === 0 || i === last)
  return ends.flatMap((i) =>
    [0, 1, 2].flatMap((rank) => {
      const plan = refooted(on, i, rank)
      const t = plan?.lines
        .find((l) => l.id === on.line.id)
        ?.tieBacks.find((x) => x.stanchion === on.line.stanchions[i]!.id)
      if (!plan || !t) return []
      const label = `Put tie-back ${t.id} on loops ${t.strapLoop.index + 1} and ${t.tensionerLoop.index + 1}`
      return [{ label, effort: 1 + 0.5 * rank, plan }]
    }),
  )
}

function additions(on: On): Change[] {
  const { places, line, plan } = on
  if (!places) return []
  return line.stanchions.slice(1).flatMap((after, i) => {
    const before = line.stanchions[i]!
    const middle = (before.station + after.station) / 2
    const fit = places.stations.filter(
      (x, k) => places.fit[k] && x > before.station + 0.2 && x < after.station - 0.2,
    )
    const station = fit.reduce(
      (b, x) => (Math.abs(x - middle) < Math.abs(b - middle) ? x : b),
      fit[0] ?? Number.NaN,
    )
    if (Number.isNaN(station)) return []
    const made: Stanchion = {
      ...places.pattern.stanchion,
      id: freshId(plan, 'S'),
      role: 'intermediate',
      station,
    }
    const stanchions = [...line.stanchions.slice(0, i + 1), made, ...line.stanchions.slice(i + 1)]
    const label = `Add a stanchion at ${say(station, 'm', plan.units)}, between ${before.id} and ${after.id}`
    return [{ label, effort: 6, plan: withStanchions(on, stanchions) }]
  })
}

/** The plan's parts of a kind, then the library's that it does not have yet. */
function partsOf(plan: Plan, kind: Part['kind']): Part[] {
  const more = partLibrary.filter((p) => !plan.parts.some((own) => own.id === p.id))
  return [...plan.parts, ...more].filter((p) => p.kind === kind)
}

/** The plan with a part of the library, where it is from there. */
const withPart = (plan: Plan, part: Part): Plan =>
  plan.parts.some((p) => p.id === part.id) ? plan : { ...plan, parts: [...plan.parts, part] }

function connectors(on: On): Change[] {
  const crew = on.plan.workers.filter((w) => w.line === on.line.id)
  const meant = crew.filter((w) => w.id === on.finding.subject)
  const who = meant.length > 0 ? meant : crew
  return partsOf(on.plan, 'connector').flatMap((part) => {
    if (who.every((w) => w.connector === part.id)) return []
    const ids = new Set(who.map((w) => w.id))
    const workers = on.plan.workers.map((w) => (ids.has(w.id) ? { ...w, connector: part.id } : w))
    const label = `Give ${meant.length > 0 ? meant[0]!.name : 'the crew'} ${part.name}`
    return [{ label, effort: 3 + 0.2 * who.length, plan: withPart({ ...on.plan, workers }, part) }]
  })
}

const absorbers = (on: On): Change[] =>
  partsOf(on.plan, 'line-absorber').flatMap((part) => {
    if (part.id === on.line.absorber) return []
    const label = on.line.absorber === null ? `Put in ${part.name}` : `Use ${part.name}`
    return [{ label, effort: 4, plan: withPart(withLine(on.plan, { ...on.line, absorber: part.id }), part) }]
  })

const pretensions = (on: On): Change[] =>
  [0.7, 0.8, 0.9, 1.1, 1.2, 1.3, 1.5].map((factor) => {
    const pretension = Math.round((on.line.pretension * factor) / 10) * 10
    const label = `Tension the rope to ${say(pretension, 'N', on.plan.units)}`
    const effort = 1.5 + 4 * Math.abs(factor - 1)
    return { label, effort, plan: withLine(on.plan, { ...on.line, pretension }) }
  })

function plates(on: On): Change[] {
  const plate = on.plan.basis.plateThickness
  return movable(on).map((i) => {
    const stanchions = on.line.stanchions.map((s, k) => (k === i ? { ...s, plate } : s))
    const label = `Put plates of ${say(plate, 'm', on.plan.units)} under the bolts of ${on.line.stanchions[i]!.id}`
    return { label, effort: 1, plan: withStanchions(on, stanchions) }
  })
}

const MAKE: Record<Kind, (on: On) => Change[]> = {
  move: moves,
  add: additions,
  feet,
  connector: connectors,
  absorber: absorbers,
  pretension: pretensions,
  plate: plates,
}

/** Changes worth trying for a finding, the smallest first. */
export function changesFor(plan: Plan, finding: Pick<Finding, 'rule' | 'subject' | 'line'>): Change[] {
  const line = lineOfFinding(plan, finding)
  if (!line) return []
  const on: On = { plan, line, places: placesOf(plan, line), finding }
  return (KINDS[finding.rule] ?? []).flatMap((k) => MAKE[k](on)).sort((a, b) => a.effort - b.effort)
}
