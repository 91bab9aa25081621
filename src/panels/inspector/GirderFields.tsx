import type { JSX } from 'react'
import { sectionShapes } from '../../plan/sections'
import type { Girder, GirderSection } from '../../plan/types'
import { change } from '../../state/change'
import { girderLength } from '../../state/edits/gaps'
import { LEAST_GIRDER, setGirderLength } from '../../state/edits/girder-edits'
import { typePoint } from '../../state/typed/put'
import { ChoiceField } from '../fields/ChoiceField'
import { QuantityField } from '../fields/QuantityField'
import { TextField } from '../fields/TextField'
import { CommandButtons } from './CommandButtons'
import css from './inspector.module.css'
import { PointFields } from './PointFields'
import { put } from './put'

const sizes: [keyof GirderSection, string][] = [
  ['depth', 'Depth'],
  ['topWidth', 'Top width'],
  ['topThickness', 'Top thickness'],
  ['webThickness', 'Web thickness'],
  ['bottomWidth', 'Bottom width'],
  ['bottomThickness', 'Bottom thickness'],
]

export function GirderFields({ girder }: { girder: Girder }): JSX.Element {
  const set = (recipe: (g: Girder) => void, what: string): string | null =>
    change('girder', girder.id, `${what} of ${girder.name || girder.id}`, (f) => recipe(f.girder))
  return (
    <>
      <TextField
        label="Name"
        value={girder.name}
        must
        onTake={(v) => void set((g) => put(g, 'name', v), 'change the name')}
      />
      <QuantityField
        label="Length"
        unit="m"
        value={girderLength(girder)}
        least={LEAST_GIRDER}
        most={500}
        onTake={(v) => set((g) => void setGirderLength(g, v), 'change the length')}
      />
      <Ends girder={girder} />
      <div className={css.sub}>Section</div>
      <SectionFields girder={girder} set={set} />
      <CommandButtons
        ids={['rig.lineOnGirder', 'site.copyGirder', 'site.addLoops', 'site.loopTable', 'edit.delete']}
      />
    </>
  )
}

type Set = (recipe: (g: Girder) => void, what: string) => string | null

function Ends({ girder }: { girder: Girder }): JSX.Element {
  const ref = { kind: 'girder', id: girder.id } as const
  return (
    <>
      <PointFields title="Start" point={girder.start} onTake={(p) => typePoint(ref, 0, p)} />
      <PointFields title="End" point={girder.end} onTake={(p) => typePoint(ref, 1, p)} />
    </>
  )
}

function SectionFields({ girder, set }: { girder: Girder; set: Set }): JSX.Element {
  const same = sectionShapes.find((s) =>
    sizes.every(([key]) => Math.abs(s.section[key] - girder.section[key]) < 5e-4),
  )
  const own = same ? [] : [{ value: 'own', label: 'own figures' }]
  return (
    <>
      <ChoiceField
        label="Shape"
        wide
        value={same?.id ?? 'own'}
        choices={[...own, ...sectionShapes.map((s) => ({ value: s.id, label: s.name }))]}
        onTake={(id) => {
          const chosen = sectionShapes.find((s) => s.id === id)
          if (chosen)
            set(
              (g) => void Object.assign(g, { section: { ...chosen.section }, material: chosen.material }),
              'change the section',
            )
        }}
      />
      {sizes.map(([key, label]) => (
        <QuantityField
          key={key}
          label={label}
          unit="m"
          value={girder.section[key]}
          least={0.003}
          most={10}
          onTake={(v) => set((g) => put(g.section, key, v), 'change the section')}
        />
      ))}
    </>
  )
}
