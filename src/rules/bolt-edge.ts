import { derived, given } from '../solver/explain'
import { compare, holds } from './judge'
import type { Rule } from './rule'
import { eachStanchion, stanchionOf } from './subjects'
import { brief, limitSource, say, sources } from './words'

export const boltEdge: Rule = {
  id: 'bolt-edge',
  subject: 'stanchion',
  title: 'Bolt to edge',
  asks: 'Do the levelling bolts stand far enough from the edge, or on a thick enough plate?',
  source: 'common practice',
  check: (ctx) =>
    eachStanchion(ctx, (s, line) => {
      const { plan } = ctx
      const { basis, units } = plan
      const plate = s.stanchion.plate ?? 0
      const onGirder = s.boltEdge >= 0
      // A plate spreads a bolt's push near an edge; it does not hold up a bolt that stands beside the girder.
      const plated = onGirder && plate > 0 && holds(plate, basis.plateThickness, 'at least')
      const wanted = say(basis.plateThickness, 'm', units)
      const found = compare(boltEdge, {
        subject: s.stanchion.id,
        line: line.line.id,
        where: `Stanchion ${s.stanchion.id}`,
        value: s.boltEdge,
        limit: basis.boltEdge,
        want: 'at least',
        unit: 'm',
        system: units,
        tells: (v) =>
          onGirder
            ? `nearest levelling bolt ${v} from the girder’s edge`
            : `a levelling bolt stands beside the girder’s top, ${v} from its edge`,
        limitSource: limitSource(plan, 'boltEdge'),
        source: sources(boltEdge.source, limitSource(plan, 'boltEdge')),
        advice: onGirder
          ? `Put plates of ${wanted} or more under its bolts (${brief(limitSource(plan, 'plateThickness'))}) or move it inwards.`
          : 'Move it inwards.',
        remark:
          plate > 0 ? `Plates of ${say(plate, 'm', units)} under its bolts, ${wanted} wanted there.` : '',
        ...(plated ? { otherwise: 'pass' as const } : {}),
      })
      return plated ? { ...found, text: found.text.replace(/ Put plates .*? inwards\./, '') } : found
    }),
  explain: (ctx, finding) => {
    const on = stanchionOf(ctx, finding)
    if (!on) return null
    return derived(
      'boltEdge',
      'Nearest levelling bolt to the edge',
      [
        given('Width of the girder’s top', on.line.girder.section.topWidth, 'm', 'the plan'),
        given('Offset of the stanchion', on.facts.stanchion.offset, 'm', 'the plan'),
        given('Bolts across the girder', on.facts.bracket.boltsAcross, 'm', on.facts.bracket.source),
      ],
      { value: on.facts.boltEdge },
    )
  },
}
