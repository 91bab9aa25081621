/** A page that says what changed since another state of the plan, both side by side. */
import type { Content } from 'pdfmake/interfaces'
import { paperTheme } from '../../drawings/theme'
import { type Comparison, changeText, type Studied } from '../compare'
import { findingRows, governingRows, type SideBySide } from '../compare/tables'
import { tapePairs } from '../compare/tapes'
import { drawing, heading, inner, say, table, together } from '../pdf/paper'
import type { Chapter } from './context'

export function comparisonChapter(c: Chapter, before: Studied, comparison: Comparison): Content[] {
  const { plan } = c.input
  const changes = comparison.changes.map((x) => changeText(x, plan, c.units))
  const nothing = changes.length + comparison.governing.length + comparison.findings.length === 0
  return [
    heading(c.letters, `Compared with ${before.plan.title}`, 1),
    say(c.letters, `The other plan has the hash ${before.results.planHash}.`),
    ...(nothing ? [say(c.letters, 'Nothing that counts differs.')] : []),
    ...tapesOf(c, before, comparison),
    ...listed(c, 'What moved or changed', changes),
    ...sideBySide(c, 'Governing numbers', governingRows(comparison, plan, c.units)),
    ...sideBySide(c, 'Findings', findingRows(comparison, plan, c.units)),
  ]
}

function listed(c: Chapter, title: string, texts: string[]): Content[] {
  if (texts.length === 0) return []
  return [heading(c.letters, title, 2), { ul: texts.map((t) => say(c.letters, t)) } as Content]
}

function sideBySide(c: Chapter, title: string, rows: SideBySide[]): Content[] {
  if (rows.length === 0) return []
  const body = rows.map((r) => [r.what, r.before, r.after])
  return [
    heading(c.letters, title, 2),
    table(c.letters, { head: ['', 'Before', 'After'], rows: body, widths: ['*', 120, 120] }),
  ]
}

/** Two tapes above each other, over the same stations, what moved joined between them. */
function tapesOf(c: Chapter, before: Studied, comparison: Comparison): Content[] {
  const after = { plan: c.input.plan, results: c.input.study.results }
  const size = { width: inner(c.sheet).width, height: 120, theme: paperTheme }
  return tapePairs(before, after, comparison, size).map((pair) =>
    together([heading(c.letters, pair.name, 3), drawing(pair.picture, c.letters)]),
  )
}
