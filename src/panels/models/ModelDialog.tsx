/** A model file that was picked: what is in it, in what units and which way up, and where it goes. */
import { Button, Progress } from '@mantine/core'
import { type JSX, useEffect, useState } from 'react'
import type { TriangleSoup } from '../../models/types'
import { formatLength } from '../../plan/units'
import { type ModelPlacing, placedBounds, placeModel } from '../../state/files/mesh'
import { readInWorker } from '../../state/models/reader'
import { useApp } from '../../state/store'
import { ChoiceField } from '../fields/ChoiceField'
import { closeDialog, DialogFrame } from '../shell/DialogFrame'
import { BeamList } from './BeamList'
import css from './models.module.css'

type Reading = { share: number; what: string } | { soup: TriangleSoup } | { why: string }

export default function ModelDialog(): JSX.Element | null {
  const picked = useApp((s) => (s.dialog?.kind === 'model' ? s.dialog : null))
  const [reading, setReading] = useState<Reading>({ share: 0, what: 'opening' })
  useEffect(() => {
    if (!picked) return
    let current = true
    const take = (r: Reading): void => {
      if (current) setReading(r)
    }
    void readInWorker(picked.name, picked.bytes, (share, what) => take({ share, what })).then((read) =>
      take(read.ok ? { soup: read.value } : { why: read.why }),
    )
    return () => {
      current = false
    }
  }, [picked])
  if (!picked) return null
  return (
    <DialogFrame title={`Model ${picked.name}`}>
      {'why' in reading ? <p className={css.fault}>{reading.why}</p> : null}
      {'share' in reading ? <Progress value={reading.share * 100} aria-label={reading.what} /> : null}
      {'soup' in reading ? <Placing name={picked.name} bytes={picked.bytes} soup={reading.soup} /> : null}
    </DialogFrame>
  )
}

const unitChoices = [
  { value: '1', label: 'metres' },
  { value: '0.001', label: 'millimetres' },
  { value: '0.01', label: 'centimetres' },
  { value: '0.3048', label: 'feet' },
  { value: '0.0254', label: 'inches' },
]

/** What the file says of its unit, else what its size suggests. */
function firstScale({ low, high, metresPerUnit }: TriangleSoup): number {
  if (metresPerUnit !== null) return metresPerUnit
  return Math.max(...high.map((v, k) => v - low[k]!)) > 1000 ? 0.001 : 1
}

function Placing({
  name,
  bytes,
  soup,
}: {
  name: string
  bytes: Uint8Array
  soup: TriangleSoup
}): JSX.Element {
  const units = useApp((s) => s.units)
  const [placing, setPlacing] = useState<ModelPlacing>({
    scale: firstScale(soup),
    upAxis: soup.upAxis,
    ownPlace: false,
  })
  const [why, setWhy] = useState<string | null>(null)
  const { size } = placedBounds(soup, placing)
  const place = async (): Promise<void> => {
    const refused = await placeModel(name, bytes, soup, placing)
    setWhy(refused)
    if (!refused) closeDialog()
  }
  return (
    <>
      <p className={css.quiet}>{soup.triangles.length / 9} triangles</p>
      {soup.notes.map((note) => (
        <p key={note} className={css.look}>
          Look here: {note}.
        </p>
      ))}
      <ChoiceField
        label="Its units are"
        value={String(placing.scale)}
        choices={unitChoices}
        onTake={(v) => setPlacing({ ...placing, scale: Number(v) })}
      />
      <ChoiceField
        label="Upwards is"
        value={placing.upAxis}
        choices={[
          { value: 'z', label: 'its z axis' },
          { value: 'y', label: 'its y axis' },
        ]}
        onTake={(v) => setPlacing({ ...placing, upAxis: v === 'y' ? 'y' : 'z' })}
      />
      <ChoiceField
        label="It goes"
        value={placing.ownPlace ? 'own' : 'ground'}
        choices={[
          { value: 'ground', label: 'on the ground, in the middle of the site' },
          { value: 'own', label: 'where its own coordinates say' },
        ]}
        onTake={(v) => setPlacing({ ...placing, ownPlace: v === 'own' })}
      />
      <p data-testid="model-size">
        So it is {formatLength(size[0], units)} by {formatLength(size[1], units)} in plan and{' '}
        {formatLength(size[2], units)} high.
      </p>
      {why ? <p className={css.fault}>{why}</p> : null}
      <div className={css.actions}>
        <Button variant="filled" onClick={() => void place()}>
          Place it as an obstacle
        </Button>
        <Button variant="default" onClick={closeDialog}>
          Close
        </Button>
      </div>
      {/\.ifc$/i.test(name) ? <BeamList bytes={bytes} /> : null}
    </>
  )
}
