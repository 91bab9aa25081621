/** How sure the figures are: the spread of clearance and tension where what goes in varies, as far as it was computed. */
import type { Content } from 'pdfmake/interfaces'
import { spreadPlot } from '../../drawings/spread-plot'
import { paperTheme } from '../../drawings/theme'
import { ruleById } from '../../rules'
import type { Distribution, SpreadResult } from '../../study/spread/types'
import { nameOf } from '../names'
import { drawing, heading, inner, say, table } from '../pdf/paper'
import type { Chapter } from './context'

export function sensitivityChapter(c: Chapter): Content[] {
  const spreads = c.input.spreads ?? []
  if (spreads.length === 0) return []
  return [
    heading(c.letters, 'How far the results spread', 1),
    say(
      c.letters,
      'Findings use the worst corner of every range. Here the same figures vary inside their ranges instead; nothing of it counts as a limit.',
    ),
    ...spreads.flatMap((s) => lineSpread(c, nameOf(c.input.plan, s.line), s.result)),
  ]
}

function lineSpread(c: Chapter, name: string, r: SpreadResult): Content[] {
  const failed = r.failed > 0 ? ` ${r.failed} of them could not be computed and count in no share.` : ''
  const room =
    r.room === null ? 'Nothing below limits it.' : `Clearance that is there: ${c.both(r.room, 'm')}.`
  return [
    heading(c.letters, `${name}: ${r.samples} samples, seed ${r.seed}`, 2),
    say(c.letters, `${r.method}${failed} ${room}`, { size: 8 }),
    pictures(c, r),
    figureTable(c, r),
    ruleTable(c, r),
    heading(c.letters, 'What matters: share of the variance', 3),
    matterTable(c, r),
    heading(c.letters, 'What varied, and how far', 3),
    inputTable(c, r),
  ]
}

function pictures(c: Chapter, r: SpreadResult): Content {
  const width = inner(c.sheet).width / 2 - 8
  const one = (name: string, unit: string, of: Distribution): Content =>
    drawing(spreadPlot({ name, unit, of, units: c.units }, width, 150, paperTheme), c.letters)
  const columns = [one('Clearance needed', 'm', r.clearance), one('Greatest tension', 'N', r.tension)]
  return { columns, columnGap: 16, unbreakable: true }
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`

function figureTable(c: Chapter, r: SpreadResult): Content {
  const row = (name: string, unit: string, d: Distribution): string[] => [
    name,
    c.both(d.corner, unit),
    ...d.quantiles.map((q) => c.both(q.value, unit)),
    percent(d.beyond),
  ]
  const shares = r.clearance.quantiles.map((q) => `${Math.round(100 * q.share)} % at most`)
  return table(c.letters, {
    head: ['', 'Worst corner', ...shares, 'Beyond the corner'],
    rows: [row('Clearance', 'm', r.clearance), row('Tension', 'N', r.tension)],
    widths: [50, '*', ...shares.map(() => '*'), 50],
    size: 7.5,
  })
}

function ruleTable(c: Chapter, r: SpreadResult): Content {
  const rows = r.rules.map((x) => [ruleById(x.rule)?.title ?? x.rule, percent(x.share)])
  return table(c.letters, { head: ['Rule', 'Share of samples that fail it'], rows, widths: ['*', 160] })
}

function matterTable(c: Chapter, r: SpreadResult): Content {
  const tension = new Map(r.tension.matters.map((m) => [m.input, m.share]))
  const rows = r.clearance.matters.map((m) => [m.label, percent(m.share), percent(tension.get(m.input) ?? 0)])
  return table(c.letters, { head: ['', 'Clearance', 'Tension'], rows, widths: ['*', 90, 90] })
}

function inputTable(c: Chapter, r: SpreadResult): Content {
  const rows = r.inputs.map((i) => [i.label, c.both(i.low, i.unit), c.both(i.high, i.unit)])
  return table(c.letters, { head: ['', 'From', 'To'], rows, widths: ['*', 130, 130] })
}
