import { Button } from '@mantine/core'
import type { JSX } from 'react'
import { getDesk } from '../../desk/desk'
import { tell } from '../../state/ask'
import { readAgain } from '../../state/models/load'
import { type ModelEntry, modelStore } from '../../state/models/model-store'
import { app } from '../../state/store'
import css from './clashes.module.css'

/** The model files that the plan names: what was read, what is odd about it, what could not be read and why. */
export function Models(): JSX.Element | null {
  const byFile = modelStore((s) => s.byFile)
  if (byFile.size === 0) return null
  return (
    <section aria-label="Model files">
      <h3>Model files</h3>
      {[...byFile].map(([file, entry]) => (
        <div key={file} className={css.way} data-model={file} data-state={entry.state}>
          <p>{file}</p>
          <p className={entry.state === 'failed' ? css.fault : css.quiet}>{entryWords(entry)}</p>
          {entry.state === 'failed' ? (
            <Button size="compact-xs" variant="default" onClick={() => void again(file, entry.needsFolder)}>
              {entry.needsFolder ? 'Choose the plan’s folder' : 'Read it again'}
            </Button>
          ) : null}
        </div>
      ))}
    </section>
  )
}

function entryWords(entry: ModelEntry): string {
  switch (entry.state) {
    case 'reading':
      return `${entry.what}, ${Math.round(entry.share * 100)} %`
    case 'failed':
      return entry.why
    case 'read':
      return [`${entry.soup.triangles.length / 9} triangles`, ...entry.soup.notes].join('; ')
  }
}

async function again(file: string, needsFolder: boolean): Promise<void> {
  if (needsFolder) {
    const chosen = await getDesk().chooseFolder(app.getState().file.id)
    if (!chosen.ok) {
      if (chosen.code !== 'cancelled') tell(chosen.why, 'fails')
      return
    }
  }
  readAgain(file)
}
