/** Findings with limit, value, margin and source; and the sums behind those that govern. */
import type { Content } from 'pdfmake/interfaces'
import { ruleById } from '../../rules'
import type { Explained } from '../../solver/explain'
import { explainFinding } from '../../study/explain'
import type { Finding } from '../../study/results'
import { nameWithId } from '../names'
import { heading, say, table } from '../pdf/paper'
import { countedFindings, statusOrder, statusWords, worstFirst } from '../status'
import type { Chapter } from './context'

export function findingsChapter(c: Chapter): Content[] {
  const { findings } = c.input.study.results
  const { letters } = c
  const sorted = worstFirst(findings)
  const sources = [...new Set(sorted.map((f) => f.source))]
  const list = sources.map((s, i) => [String(i + 1), s])
  return [
    heading(letters, 'Findings', 1),
    say(letters, countedFindings(findings)),
    ...statusOrder.flatMap((status) => {
      const some = sorted.filter((f) => f.status === status)
      if (some.length === 0) return []
      return [heading(letters, headings[status], 2), findingTable(c, some, sources)]
    }),
    heading(letters, 'Sources of the findings', 2),
    table(letters, { head: ['', ''], rows: list, widths: [18, '*'], size: 7.5 }),
  ]
}

const headings: Record<Finding['status'], string> = {
  fail: 'Fails',
  warn: 'Look here',
  unknown: 'Not known',
  pass: 'Holds',
}

/** Sources repeat: a number stands for each, and the list follows the findings. */
function findingTable(c: Chapter, findings: Finding[], sources: string[]): Content {
  const rows = findings.map((f) => [
    `${ruleById(f.rule)?.title ?? f.rule}\n${nameWithId(c.input.plan, f.subject)}`,
    f.value === null && f.status === 'pass' ? '-' : c.both(f.value, f.unit),
    f.limit === null ? 'no limit' : c.both(f.limit, f.unit),
    f.margin === undefined || f.margin === null ? '' : c.both(f.margin, f.unit),
    f.text,
    String(sources.indexOf(f.source) + 1),
  ])
  return table(c.letters, {
    head: ['What, where', 'Value', 'Limit', 'Margin', 'In words', 'Source'],
    rows,
    widths: [92, 62, 62, 58, '*', 30],
    size: 7.5,
  })
}

/** Rules whose numbers decide a line; their sums are printed for the subject nearest to its limit. */
const GOVERNING = [
  'wire-rope-strength',
  'hardware-strength',
  'stanchion-strength',
  'tie-back-strength',
  'loop-strength',
  'absorber-runs-out',
  'free-fall',
  'arrest-force',
  'deceleration',
  'eye-offset',
  'obstacle-gap',
]

/** Everything that does not hold, and of each governing rule the subject with the least margin on each line. */
export function explainedFindings(c: Chapter): Finding[] {
  const sorted = worstFirst(c.input.study.results.findings)
  const seen = new Set<string>()
  return sorted.filter((f) => {
    const key = `${f.rule}/${f.line ?? ''}`
    const first = GOVERNING.includes(f.rule) && !seen.has(key)
    if (first) seen.add(key)
    return f.status !== 'pass' || first
  })
}

export function explanationChapter(c: Chapter): Content[] {
  const { letters } = c
  const trees = explainedFindings(c).flatMap((f) => {
    const tree = explainFinding(c.input.study, f)
    return tree && tree.parts.length > 0 ? explainedBlock(c, f, tree) : []
  })
  return [
    heading(letters, 'How the governing numbers came about', 1),
    say(
      letters,
      'Each number with the numbers it came from, indented below it; where no formula stands, the source says how it was found.',
    ),
    ...(trees.length > 0 ? trees : [say(letters, 'No sums were made.')]),
  ]
}

function explainedBlock(c: Chapter, f: Finding, tree: Explained): Content[] {
  const title = `${ruleById(f.rule)?.title ?? f.rule}: ${nameWithId(c.input.plan, f.subject)} (${statusWords[f.status]})`
  const rows = toldOnce(tree).map(({ node, depth, again }) => [
    { ...say(c.letters, label(node), { bold: depth === 0 }), margin: [depth * 9, 0, 0, 0] } as Content,
    say(c.letters, c.both(node.value, node.unit), { bold: depth === 0 }),
    again ? 'as worked out above' : (node.formula ?? ''),
    node.note ? `${node.source}. ${node.note}` : node.source,
  ])
  return [
    heading(c.letters, title, 3),
    table(c.letters, {
      head: ['Number', 'Value', 'Formula', 'Source'],
      rows,
      widths: [180, 96, 110, '*'],
      size: 7.5,
    }),
  ]
}

interface Row {
  node: Explained
  depth: number
  /** Its parts stand further up in the same table. */
  again: boolean
}

/** Each number with its parts once: where the same number comes again from the same parts, its row stands alone. */
function toldOnce(tree: Explained): Row[] {
  const seen = new Set<string>()
  const rows = (node: Explained, depth: number): Row[] => {
    if (node.parts.length === 0) return [{ node, depth, again: false }]
    const key = JSON.stringify(node)
    if (seen.has(key)) return [{ node, depth, again: true }]
    seen.add(key)
    return [{ node, depth, again: false }, ...node.parts.flatMap((part) => rows(part, depth + 1))]
  }
  return rows(tree, 0)
}

/** A label that says how, as "the shaft, pressed,", stands here without the comma that a sentence wants. */
const label = ({ label: text, symbol }: Explained): string =>
  symbol ? `${text}, ${symbol}` : text.replace(/,$/, '')
