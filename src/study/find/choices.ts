/** Which parts a search may take, and which of them no layout can make pass. */
import type { Line, Plan } from '../../plan/types'
import { bareFindings, stops } from './bare'
import { aloneWith, type Pattern, withLayout } from './layout'
import { reasonsOf } from './places'
import type { Choice, FindTask, Layout, Reason } from './types'

/** Rules that judge parts, crew and the line's direction, whatever the layout. */
const CHOICE_RULES = new Set([
  'line-slope',
  'bar-size',
  'free-fall',
  'arrest-force',
  'deceleration',
  'connector-runs-out',
  'worker-mass',
])

/** Every combination of what the task lists; what it does not list stays as the line has it. */
export function choicesOf(task: FindTask, line: Line): Choice[] {
  const own = <T>(list: T[] | undefined, now: T): T[] =>
    list && list.length > 0 ? [...new Set(list)] : [now]
  const choices: Choice[] = []
  for (const absorber of own(task.absorbers, line.absorber)) {
    for (const connector of own<string | null>(task.connectors, null)) {
      for (const pretension of own(task.pretensions, line.pretension)) {
        choices.push({ absorber, connector, pretension })
      }
    }
  }
  return choices
}

/** Why no layout with this choice can pass; empty where nothing speaks against it. */
export function choiceStops(plan: Plan, lineId: string, pattern: Pattern, ends: Layout): Reason[] {
  const made = withLayout(plan, lineId, pattern, ends)
  const line = made.lines.find((l) => l.id === lineId)!
  const found = bareFindings(aloneWith(made, line), line)
  return reasonsOf(found.filter((f) => CHOICE_RULES.has(f.rule) && stops(f)))
}

/** A choice in words, by the names of its parts. */
export function choiceWords(plan: Plan, choice: Choice, pretension: string): string {
  const name = (id: string): string => plan.parts.find((p) => p.id === id)?.name ?? id
  const absorber = choice.absorber === null ? 'no line absorber' : name(choice.absorber)
  return [absorber, ...(choice.connector === null ? [] : [name(choice.connector)]), pretension].join(', ')
}
