/** In place of the picture where it can't be drawn; everything else in the window goes on. */
import { Component, type ReactNode } from 'react'
import styles from './scene.module.css'

export function NoPicture({ why, again }: { why: string; again?: () => void }) {
  return (
    <div className={styles.message} role="status" data-scene-message="">
      <p>The 3D picture can't be drawn here: {why}.</p>
      <p>Findings, tape, drawings and everything else go on without it.</p>
      {again && (
        <button type="button" onClick={again}>
          Draw it again
        </button>
      )}
    </div>
  )
}

interface Caught {
  why: string | null
}

/** Keeps a fault in the picture inside the picture. */
export class SceneBoundary extends Component<{ children: ReactNode }, Caught> {
  override state: Caught = { why: null }

  static getDerivedStateFromError(error: unknown): Caught {
    return { why: error instanceof Error ? error.message : String(error) }
  }

  override render(): ReactNode {
    if (this.state.why === null) return this.props.children
    return <NoPicture why={this.state.why} again={() => this.setState({ why: null })} />
  }
}
