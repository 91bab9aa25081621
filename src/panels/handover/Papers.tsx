/** The papers of the plan: look at their pages, export one, or all of it as one file. */
import { Button, Checkbox, TextInput } from '@mantine/core'
import { type JSX, lazy, Suspense, useState } from 'react'
import { paperKey } from '../../handover/files/keys'
import { fileName } from '../../handover/files/names'
import { type Language, languages, wordsOf } from '../../handover/words'
import { app, useApp } from '../../state/store'
import { ApprovalState } from '../shell/ApprovalState'
import { exportBytes, exportFiles } from './export'
import css from './handover.module.css'
import { makeArchive, makeFiles, useMaking } from './making'

const PagesDialog = lazy(() => import('./PagesDialog'))

interface Shown {
  title: string
  bytes: Uint8Array
}

export function Papers(): JSX.Element {
  const [shown, setShown] = useState<Shown | null>(null)
  const lines = useApp((s) => s.plan.lines)
  const chosen = useMaking((s) => s.languages)
  return (
    <>
      <ApprovalState />
      <Choices />
      <PaperRow title="Calculation package" paper={paperKey.package} show={setShown} />
      {chosen.flatMap((language) => [
        <h3 key={language}>{wordsOf(language).name}</h3>,
        ...lines.map((l) => (
          <PaperRow
            key={`${language} ${l.id}`}
            title={`${wordsOf(language).sheet.title}, ${l.name || l.id}`}
            paper={paperKey.sheet(l.id, language)}
            show={setShown}
          />
        )),
        <PaperRow
          key={`${language} tags`}
          title={`${wordsOf(language).tag.title}: tags`}
          paper={paperKey.tags(language)}
          show={setShown}
        />,
      ])}
      <h3>Drawings and data</h3>
      <PaperRow title="Drawings, SVG and DXF" paper={paperKey.drawings} />
      <PaperRow title="Tables, CSV" paper={paperKey.tables} />
      <PaperRow title="Fall room, GLB and STL" paper={paperKey.room} />
      <PaperRow title="Results, JSON" paper={paperKey.results} />
      <h3>All of it</h3>
      <EverythingButton />
      <Suspense fallback={null}>
        {shown ? <PagesDialog {...shown} close={() => setShown(null)} /> : null}
      </Suspense>
    </>
  )
}

function Choices(): JSX.Element {
  const { revision, languages: chosen } = useMaking()
  const choose = (language: Language, on: boolean): void =>
    useMaking.setState({ languages: languages.filter((l) => (l === language ? on : chosen.includes(l))) })
  return (
    <>
      <TextInput
        label="Revision, printed beside the plan's hash"
        value={revision}
        maxLength={40}
        onChange={(e) => useMaking.setState({ revision: e.currentTarget.value })}
      />
      <fieldset style={{ border: 0, padding: 0, margin: '8px 0' }}>
        <legend className={css.quiet}>Languages of crew sheets and tags</legend>
        {languages.map((l) => (
          <Checkbox
            key={l}
            size="xs"
            label={wordsOf(l).name}
            checked={chosen.includes(l)}
            onChange={(e) => choose(l, e.currentTarget.checked)}
          />
        ))}
      </fieldset>
    </>
  )
}

function PaperRow(props: { title: string; paper: string; show?: (shown: Shown) => void }): JSX.Element {
  const busy = useMaking((s) => s.at !== null)
  const { title, paper, show } = props
  const look = async (): Promise<void> => {
    const files = await makeFiles(paper)
    if (files?.[0]) show?.({ title, bytes: files[0].bytes })
  }
  const take = async (): Promise<void> => {
    const files = await makeFiles(paper)
    if (files) await exportFiles(files, fileName(title))
  }
  return (
    <div className={css.row}>
      <span>{title}</span>
      {show ? (
        <Button disabled={busy} onClick={() => void look()} aria-label={`Pages of ${title}`}>
          Pages
        </Button>
      ) : null}
      <Button disabled={busy} onClick={() => void take()} aria-label={`Export ${title}`}>
        Export
      </Button>
    </div>
  )
}

function EverythingButton(): JSX.Element {
  const busy = useMaking((s) => s.at !== null)
  const take = async (): Promise<void> => {
    const bytes = await makeArchive()
    if (bytes) await exportBytes(`${fileName(app.getState().plan.title)}-hand-over.zip`, bytes)
  }
  return (
    <div className={css.row}>
      <span>Papers, drawings, tables, room and results in one archive</span>
      <Button variant="filled" disabled={busy} onClick={() => void take()}>
        Export everything
      </Button>
    </div>
  )
}
