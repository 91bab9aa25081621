/** Parts with every figure and its source, and the limits with theirs. */
import type { Content } from 'pdfmake/interfaces'
import type { Basis, Part, Range } from '../../plan/types'
import { heading, table } from '../pdf/paper'
import type { Chapter } from './context'

type Figure = [name: string, value: number | Range | undefined, unit: string]

/** The figures of a part, in the order in which its documentation would give them. */
function figures(p: Part): Figure[] {
  switch (p.kind) {
    case 'wire-rope':
      return [
        ['diameter', p.diameter, 'm'],
        ['breaking strength', p.breakingStrength, 'N'],
        ['EA', p.axialStiffness, 'N'],
        ['mass per metre', p.massPerMetre, 'kg/m'],
        ['thermal expansion', p.thermalExpansion, '1/degC'],
        ['termination', p.termination, 'fraction'],
        ['constructional stretch', p.constructionalStretch, 'fraction'],
      ]
    case 'line-absorber':
      return [
        ['onset', p.onset, 'N'],
        ['full', p.full, 'N'],
        ['extension at most', p.maxExtension, 'm'],
        ['breaking strength', p.breakingStrength, 'N'],
        ['length', p.length, 'm'],
      ]
    case 'connector':
      return [
        ['length', p.length, 'm'],
        ['stiffness', p.stiffness, 'N/m'],
        ['plateau', p.plateau, 'N'],
        ['extension at most', p.maxExtension, 'm'],
        ['force at most', p.maxForce, 'N'],
        ['rated free fall', p.ratedFreeFall, 'm'],
        ['rated mass', p.ratedMass, 'kg'],
      ]
    case 'stanchion':
      return [
        ['height of the rope', p.height, 'm'],
        ['head stiffness', p.headStiffness, 'N/m'],
        ['head capacity', p.headCapacity, 'N'],
        ['axial capacity', p.axialCapacity, 'N'],
        ['mass', p.mass, 'kg'],
      ]
    case 'bracket':
      return [
        ['tube', p.tubeLength, 'm'],
        ['bolts along', p.boltsAlong, 'm'],
        ['bolts across', p.boltsAcross, 'm'],
        ['uplift capacity', p.upliftCapacity, 'N'],
      ]
    case 'tie-back':
      return [
        ['length', p.length, 'm'],
        ['one turn', p.wrapLength, 'm'],
        ['stiffness, N per unit strain', p.stiffness, 'N'],
        ['breaking strength', p.breakingStrength, 'N'],
      ]
    case 'hardware':
      return [
        ['breaking strength', p.breakingStrength, 'N'],
        ['length', p.length, 'm'],
      ]
  }
}

const kindWords: Record<Part['kind'], string> = {
  'wire-rope': 'wire rope',
  'line-absorber': 'line absorber',
  connector: 'connector',
  stanchion: 'stanchion',
  bracket: 'bracket',
  'tie-back': 'tie-back',
  hardware: 'hardware',
}

const text = (c: Chapter, value: number | Range, unit: string): string =>
  typeof value === 'number'
    ? c.both(value, unit)
    : `${c.both(value.low, unit)} to ${c.both(value.high, unit)}`

export function partsChapter(c: Chapter): Content[] {
  const rows = c.input.plan.parts.map((p) => [
    `${p.name}\n${kindWords[p.kind]}${p.kind === 'connector' ? `, ${p.type}` : ''}`,
    figures(p)
      .flatMap(([name, value, unit]) => (value === undefined ? [] : [`${name} ${text(c, value, unit)}`]))
      .join('; '),
    p.source,
  ])
  return [
    heading(c.letters, 'Parts', 1),
    table(c.letters, { head: ['Part', 'Figures', 'Source'], rows, widths: [130, '*', 130] }),
  ]
}

type Limit = [field: keyof Basis, name: string, unit: string]

const limits: Limit[] = [
  ['safetyFactor', 'Strength over demand', 'ratio'],
  ['maxArrestForce', 'Arrest force on one body, at most', 'N'],
  ['maxFreeFall', 'Free fall, at most', 'm'],
  ['maxDeceleration', 'Connector extension, at most', 'm'],
  ['marginBelow', 'Kept free under the lowest point of the body', 'm'],
  ['marginSide', 'Kept free beside the body', 'm'],
  ['bodyRadius', 'Half-width of a hanging body', 'm'],
  ['minTieBackAngle', 'Tie-back leg from the vertical, at least', 'deg'],
  ['minLoopsEngaged', "Loops on the bracket's tube, at least", 'count'],
  ['minLoopsBeside', 'Loops on either side, at least', 'count'],
  ['minBarDiameter', 'Bar of the loops, at least', 'm'],
  ['boltEdge', 'Levelling bolt to edge without a plate, at least', 'm'],
  ['plateThickness', 'That plate, at least', 'm'],
  ['eyeOffset', 'Eye before tensioning, between', 'm'],
  ['maxSlope', 'Slope of the line, at most', 'deg'],
  ['maxSpan', 'Span between neighbouring stanchions, at most', 'm'],
]

export function basisChapter(c: Chapter): Content[] {
  const { basis } = c.input.plan
  const rows = limits.map(([field, name, unit]) => {
    const value = basis[field] as number | Range | undefined
    return [
      name,
      value === undefined ? 'not limited' : text(c, value, unit),
      basis.sources[field] ?? 'no source stated',
    ]
  })
  return [
    heading(c.letters, 'Limits and margins', 1),
    table(c.letters, { head: ['Limit', 'Value', 'Source'], rows, widths: [170, 150, '*'] }),
  ]
}
