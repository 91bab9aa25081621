/** A page that says what changed since another state of the plan. */
import type { Content } from 'pdfmake/interfaces'
import { type Comparison, comparisonLists, type Studied } from '../compare'
import { heading, say } from '../pdf/paper'
import type { Chapter } from './context'

export function comparisonChapter(c: Chapter, before: Studied, comparison: Comparison): Content[] {
  const lists = comparisonLists(comparison, c.input.plan, c.units)
  return [
    heading(c.letters, `Compared with ${before.plan.title}`, 1),
    say(c.letters, `The other plan has the hash ${before.results.planHash}.`),
    ...(lists.length === 0 ? [say(c.letters, 'Nothing that counts differs.')] : []),
    ...lists.flatMap((l) => [
      heading(c.letters, l.title, 2),
      { ul: l.items.map((item) => say(c.letters, item)) } as Content,
    ]),
  ]
}
