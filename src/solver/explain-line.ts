/** Explanations at the level of a line: strength of the rope, take-up, eye offset. */
import { derived, type Explained, found, given } from './explain'
import type { TakeUpFigures } from './lengths'

/** Breaking strength of a wire rope times the efficiency of its termination. */
export function explainRopeStrength(breaking: number, termination: number, source: string): Explained {
  return derived('ropeStrength', 'Strength of the rope at its termination', [
    given('Breaking strength', breaking, 'N', source),
    given('Efficiency of the termination', termination, 'fraction', source),
  ])
}

/** The four parts of what tensioning takes up. */
export function explainTakeUp(f: TakeUpFigures, sources: { rope: string; stanchion: string }): Explained {
  const T = given('Nominal pretension', f.tension, 'N', 'the plan', 'T')
  const S = found('Unstretched chain between the end stanchions', f.freeLength, 'm', 'installed line')
  const c = given('Constructional stretch', f.constructionalStretch, 'fraction', sources.rope, 'c')
  const EA = given('Axial stiffness, mean', f.axialStiffness, 'N', sources.rope, 'EA')
  const ends = f.endStiffness.map((K, i) =>
    found(i === 0 ? 'First head' : 'Last head', K, 'N/m', sources.stanchion),
  )
  const sags = f.spans.map((s, i) =>
    derived('takeUpSag', `Sag of span ${i + 1}`, [
      found('Sag', s.sag, 'm', 'installed line'),
      given('Span', s.length, 'm', 'geometry'),
    ]),
  )
  return derived('sum', 'Take-up', [
    derived('takeUpElastic', 'Elastic stretch', [T, S, EA]),
    derived('takeUpConstructional', 'Constructional stretch', [c, S]),
    derived('sum', 'Extra length of the sag', sags, { unit: 'm' }),
    derived('takeUpHeads', 'Movement of the heads', [T, ...ends]),
  ])
}

/** Eye to its end stanchion before tensioning. */
export function explainEyeOffset(
  absorber: { length: number; source: string } | null,
  hardware: { name: string; length: number; source: string }[],
  take: Explained,
): Explained {
  const pieces = hardware.map((h) => given(h.name, h.length, 'm', h.source))
  return derived('eyeOffset', 'Eye to its end stanchion before tensioning', [
    given(
      absorber ? 'Absorber length' : 'No absorber',
      absorber?.length ?? 0,
      'm',
      absorber?.source ?? 'the plan',
    ),
    derived('sum', 'Hardware length', pieces, { unit: 'm' }),
    take,
  ])
}
