import { Button, Menu } from '@mantine/core'
import { ChevronDown } from 'lucide-react'
import type { JSX } from 'react'
import { getDesk } from '../../desk/desk'
import type { Fault } from '../../plan/fault'
import { takeParts } from '../../plan/part-list/read'
import { writePartsCsv, writePartsJson } from '../../plan/part-list/write'
import { ask, tell } from '../../state/ask'
import { keepOwnParts } from '../../state/parts/own-parts'
import { app } from '../../state/store'

/** Part lists in and out, as JSON or CSV. */
export function PartFiles(): JSX.Element {
  return (
    <Menu position="bottom-end">
      <Menu.Target>
        <Button rightSection={<ChevronDown size={14} aria-hidden />}>Lists</Button>
      </Menu.Target>
      <Menu.Dropdown>
        <Menu.Item onClick={() => void importList()}>Import a list of parts</Menu.Item>
        <Menu.Item onClick={() => void exportList('json')}>Export as JSON</Menu.Item>
        <Menu.Item onClick={() => void exportList('csv')}>Export as CSV, figures in SI</Menu.Item>
      </Menu.Dropdown>
    </Menu>
  )
}

async function importList(): Promise<void> {
  const picked = await getDesk().pickFile('table')
  if (!picked.ok) {
    if (picked.code !== 'cancelled') tell(picked.why, 'fails')
    return
  }
  const { parts, faults } = takeParts(new TextDecoder().decode(picked.value.bytes))
  if (parts.length > 0) keepOwnParts(parts)
  const text = [`${parts.length} parts taken in as your own.`, ...faults.slice(0, 10).map(told)].join('\n')
  if (faults.length > 0)
    await ask({
      title: 'Some of the list was left out',
      text,
      choices: [{ value: 'ok', label: 'Close', main: true }],
    })
  else tell(text)
}

/** A fault with the line of the file, or else the place in it. */
const told = ({ line, path, message }: Fault): string =>
  `${line === undefined ? path : `Line ${line}`}: ${message}`

async function exportList(form: 'json' | 'csv'): Promise<void> {
  const { plan, ownParts } = app.getState()
  const ids = new Set(plan.parts.map((p) => p.id))
  const parts = [...plan.parts, ...ownParts.filter((p) => !ids.has(p.id))]
  const text = form === 'json' ? writePartsJson(parts) : writePartsCsv(parts)
  const mime = form === 'json' ? 'application/json' : 'text/csv'
  const said = await getDesk().exportFile(`parts.${form}`, new TextEncoder().encode(text), mime)
  if (said.ok) tell(`Exported ${said.value}.`)
  else if (said.code !== 'cancelled') tell(said.why, 'fails')
}
