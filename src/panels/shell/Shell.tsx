/** The one window: head, outline and what is selected on the left, the site in the middle, findings on the right, tape below. */
import { type ComponentType, type JSX, Suspense } from 'react'
import { useApp } from '../../state/store'
import { Findings } from '../findings/Findings'
import { Hint } from '../help/Hint'
import { InPlace } from '../in-place/InPlace'
import { Inspector } from '../inspector/Inspector'
import { ContextMenu } from '../menu/ContextMenu'
import { openMenuAt } from '../menu/open-menu'
import { Palette } from '../menu/Palette'
import { Outline } from '../outline/Outline'
import { EmptySite } from '../site/EmptySite'
import { TapePanel } from '../tape/TapePanel'
import { viewCover, viewPanel, viewUnder } from '../views'
import { Dialogs } from './Dialogs'
import { Header } from './Header'
import { Notices } from './Notices'
import { QuestionBox } from './QuestionBox'
import { SceneFrame } from './SceneFrame'
import css from './shell.module.css'
import { Toolbar } from './Toolbar'

export function Shell(): JSX.Element {
  const view = useApp((s) => s.view)
  const Side = viewPanel(view)
  return (
    <div className={css.shell} data-view={view}>
      <div className={css.head}>
        <Header />
      </div>
      <nav className={css.left} aria-label="Outline and selection">
        <Outline />
        <Inspector />
      </nav>
      <main className={css.scene} onContextMenu={openMenuAt}>
        <div className={css.picture}>
          <SceneFrame />
          <EmptySite />
          <Toolbar />
          <Hint />
          <Loaded part={viewCover(view)} />
        </div>
        <Loaded part={viewUnder(view)} />
      </main>
      <aside className={css.right} aria-label={Side ? 'View' : 'Findings'}>
        {Side ? (
          <Suspense fallback={null}>
            <Side />
          </Suspense>
        ) : (
          <Findings />
        )}
      </aside>
      <section className={css.tape} aria-label="Tape">
        <TapePanel />
      </section>
      <InPlace />
      <ContextMenu />
      <Palette />
      <Dialogs />
      <QuestionBox />
      <Notices />
    </div>
  )
}

/** A part that a view brings along; nothing until it has loaded. */
function Loaded({ part: Part }: { part: ComponentType | undefined }): JSX.Element | null {
  return Part ? (
    <Suspense fallback={null}>
      <Part />
    </Suspense>
  ) : null
}
