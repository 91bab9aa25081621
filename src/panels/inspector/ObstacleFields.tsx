import type { JSX } from 'react'
import { laneClearances } from '../../plan/lane-clearances'
import type { Obstacle, Vec3 } from '../../plan/types'
import { formatQuantity } from '../../plan/units'
import { change } from '../../state/change'
import { useApp } from '../../state/store'
import { ChoiceField } from '../fields/ChoiceField'
import { QuantityField } from '../fields/QuantityField'
import { TextField } from '../fields/TextField'
import { CommandButtons } from './CommandButtons'
import css from './inspector.module.css'
import { PointFields } from './PointFields'
import { put } from './put'

type Of<K extends Obstacle['kind']> = Extract<Obstacle, { kind: K }>
type Set<K extends Obstacle['kind']> = (recipe: (o: Of<K>) => void) => string | null

export function ObstacleFields({ obstacle }: { obstacle: Obstacle }): JSX.Element {
  const set = (recipe: (o: never) => void): string | null =>
    change('obstacle', obstacle.id, `change ${obstacle.name || obstacle.id}`, (f) =>
      recipe(f.obstacle as never),
    )
  const common: Set<Obstacle['kind']> = set
  return (
    <>
      <TextField
        label="Name"
        value={obstacle.name}
        must
        onTake={(v) => void common((o) => put(o, 'name', v))}
      />
      <Gap id={obstacle.id} />
      {ownFields(obstacle, set)}
      <QuantityField
        label="Keep free around"
        unit="m"
        value={obstacle.margin ?? 0}
        least={0}
        most={20}
        onTake={(v) => common((o) => put(o, 'margin', v))}
      />
      <CommandButtons ids={['edit.duplicate', 'edit.turnLeft', 'edit.turnRight', 'edit.delete']} />
    </>
  )
}

function ownFields(o: Obstacle, set: (recipe: (o: never) => void) => string | null): JSX.Element {
  switch (o.kind) {
    case 'ground':
    case 'water':
      return <LevelFields o={o} set={set} />
    case 'box':
      return <BoxFields o={o} set={set} />
    case 'lane':
      return <LaneFields o={o} set={set} />
    case 'mesh':
      return <MeshFields o={o} set={set} />
    case 'cross-frame':
      return <FrameFields o={o} set={set} />
  }
}

function Gap({ id }: { id: string }): JSX.Element | null {
  const found = useApp((s) => s.study.results?.obstacles.find((o) => o.id === id))
  const units = useApp((s) => s.units)
  if (!found) return null
  const beside = found.gap === null && found.horizontal !== undefined && found.horizontal !== null
  return (
    <dl className={css.figures}>
      <dt>{beside ? 'Beside the room by' : 'Room above it'}</dt>
      <dd>{formatQuantity(beside ? (found.horizontal ?? null) : found.gap, 'm', units)}</dd>
    </dl>
  )
}

function LevelFields({
  o,
  set,
}: {
  o: Of<'ground'> | Of<'water'>
  set: Set<'ground' | 'water'>
}): JSX.Element {
  return (
    <QuantityField
      label="Elevation"
      unit="m"
      value={o.elevation}
      onTake={(v) => set((d) => put(d, 'elevation', v))}
    />
  )
}

const sizes = ['Length (x)', 'Width (y)', 'Height'] as const

function BoxFields({ o, set }: { o: Of<'box'>; set: Set<'box'> }): JSX.Element {
  return (
    <>
      <PointFields title="Middle" point={o.center} onTake={(p) => set((d) => put(d, 'center', p))} />
      {sizes.map((label, i) => (
        <QuantityField
          key={label}
          label={label}
          unit="m"
          value={o.size[i] ?? 0}
          least={0.01}
          most={1000}
          onTake={(v) => set((d) => put(d, 'size', d.size.map((old, j) => (i === j ? v : old)) as Vec3))}
        />
      ))}
      <QuantityField
        label="Turned"
        unit="deg"
        value={o.turn ?? 0}
        least={-360}
        most={360}
        onTake={(v) => set((d) => put(d, 'turn', v))}
      />
    </>
  )
}

const clearanceChoices = laneClearances.map((c) => ({ value: c.id, label: c.name }))

/** Where a published clear height is from. */
function Published({ height }: { height: number }): JSX.Element | null {
  const preset = laneClearances.find((c) => Math.abs(c.clearHeight - height) < 1e-6)
  return preset ? <p className={css.sub}>Source: {preset.source}.</p> : null
}

function LaneFields({ o, set }: { o: Of<'lane'>; set: Set<'lane'> }): JSX.Element {
  return (
    <>
      <QuantityField
        label="Width"
        unit="m"
        value={o.width}
        least={0.1}
        most={200}
        onTake={(v) => set((d) => put(d, 'width', v))}
      />
      <QuantityField
        label="Clear height"
        unit="m"
        value={o.clearHeight}
        least={0}
        most={50}
        onTake={(v) => set((d) => put(d, 'clearHeight', v))}
      />
      <ChoiceField
        label="Height as published"
        value={laneClearances.find((c) => Math.abs(c.clearHeight - o.clearHeight) < 1e-6)?.id ?? ''}
        choices={[{ value: '', label: 'own figure' }, ...clearanceChoices]}
        onTake={(id) => {
          const preset = laneClearances.find((c) => c.id === id)
          if (preset) set((d) => put(d, 'clearHeight', preset.clearHeight))
        }}
      />
      <Published height={o.clearHeight} />
      {o.path.map((point, i) => (
        <PointFields
          key={`${o.id} ${i}`}
          title={`Point ${i + 1}`}
          point={point}
          onTake={(p) => set((d) => put(d.path, i, p))}
        />
      ))}
    </>
  )
}

const axes = [
  { value: 'z', label: 'z is up' },
  { value: 'y', label: 'y is up' },
]

function MeshFields({ o, set }: { o: Of<'mesh'>; set: Set<'mesh'> }): JSX.Element {
  return (
    <>
      <p className={css.quiet}>{o.file}</p>
      <PointFields title="At" point={o.at ?? [0, 0, 0]} onTake={(p) => set((d) => put(d, 'at', p))} />
      <QuantityField
        label="Turned"
        unit="deg"
        value={o.turn ?? 0}
        least={-360}
        most={360}
        onTake={(v) => set((d) => put(d, 'turn', v))}
      />
      <QuantityField
        label="Scale"
        unit="ratio"
        value={o.scale ?? 1}
        least={0.0001}
        most={10000}
        onTake={(v) => set((d) => put(d, 'scale', v))}
      />
      <ChoiceField
        label="In the file"
        value={o.upAxis ?? 'z'}
        choices={axes}
        onTake={(v) => void set((d) => put(d, 'upAxis', v === 'y' ? 'y' : 'z'))}
      />
    </>
  )
}

function FrameFields({ o, set }: { o: Of<'cross-frame'>; set: Set<'cross-frame'> }): JSX.Element {
  return (
    <>
      <p className={css.quiet}>between {o.between.join(' and ')}</p>
      <QuantityField
        label="Station"
        unit="m"
        value={o.station}
        least={0}
        most={500}
        onTake={(v) => set((d) => put(d, 'station', v))}
      />
      <QuantityField
        label="Bar size"
        unit="m"
        value={o.barSize}
        least={0.01}
        most={1}
        onTake={(v) => set((d) => put(d, 'barSize', v))}
      />
    </>
  )
}
