/** The scene, loaded after the first paint; where it can't be drawn the rest of the window goes on. */
import { type JSX, lazy, Suspense } from 'react'
import { ErrorBoundary } from './ErrorBoundary'
import css from './scene-frame.module.css'

const Scene = lazy(() => import('../../scene/Scene'))

export function SceneFrame(): JSX.Element {
  return (
    <ErrorBoundary
      fallback={(why, again) => (
        <div className={css.empty} role="alert">
          <p>
            The picture of the site can not be drawn: {why}. The plan, the findings and the tape are unharmed.
          </p>
          <button type="button" onClick={again}>
            Draw it again
          </button>
        </div>
      )}
    >
      <Suspense fallback={<div className={css.empty}>Drawing the site</div>}>
        <Scene />
      </Suspense>
    </ErrorBoundary>
  )
}
