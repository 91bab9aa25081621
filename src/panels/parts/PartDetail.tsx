import { Button } from '@mantine/core'
import type { JSX } from 'react'
import type { Part } from '../../plan/types'
import { formatQuantity } from '../../plan/units'
import { partInUse } from '../../state/edits/remove'
import { dropOwnPart, takePart } from '../../state/parts/own-parts'
import { figureOf, partFigures } from '../../state/parts/part-fields'
import { app, useApp } from '../../state/store'
import type { Dialog } from '../../state/window-state'
import { closeDialog } from '../shell/DialogFrame'
import { freeId, type ListedPart } from './PartsDialog'
import css from './parts.module.css'

type Choose = Extract<Dialog, { kind: 'parts' }>['choose']

/** One part's figures and where they come from. */
export function PartDetail({ listed, choose }: { listed: ListedPart; choose: Choose }): JSX.Element {
  const { part, from } = listed
  const units = useApp((s) => s.units)
  return (
    <div className={css.detail}>
      <h3>{part.name}</h3>
      <table className={css.figures}>
        <tbody>
          {partFigures[part.kind].map(({ key, label, unit }) => {
            const value = figureOf(part, key)
            return value === undefined ? null : (
              <tr key={key}>
                <th scope="row">{label}</th>
                <td>{formatQuantity(value, unit, units)}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
      <p className={css.source}>From: {part.source}</p>
      <div className={css.actions}>
        {choose ? (
          <Button variant="filled" onClick={() => use(part, choose)}>
            Use it
          </Button>
        ) : null}
        {!choose && from !== 'plan' ? (
          <Button onClick={() => takePart(part)}>Take into the plan</Button>
        ) : null}
        <Button onClick={() => openPart(copyOf(part), true)}>Copy as your own</Button>
        {from === 'library' ? null : <Button onClick={() => openPart(part, from === 'own')}>Change</Button>}
        {from === 'own' ? <Button onClick={() => dropOwnPart(part.id)}>Delete</Button> : null}
        {from === 'plan' ? <InUse id={part.id} /> : null}
      </div>
    </div>
  )
}

function use(part: Part, choose: NonNullable<Choose>): void {
  const id = takePart(part)
  closeDialog()
  choose.use(id)
}

const copyOf = (part: Part): Part => ({ ...structuredClone(part), id: freeId(part.kind), source: '' })

const openPart = (part: Part, own: boolean): void => app.setState({ dialog: { kind: 'part', part, own } })

function InUse({ id }: { id: string }): JSX.Element {
  const used = useApp((s) => partInUse(s.plan, id))
  return <span className={css.quiet}>{used ? 'used in this plan' : 'in the plan, not used'}</span>
}
