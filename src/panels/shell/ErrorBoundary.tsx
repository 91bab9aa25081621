/** Catches what a part of the window throws, so that the plan stays and can be saved. */
import { Component, type ReactNode } from 'react'
import { noteError } from '../../state/files/diagnostic'

interface Props {
  children: ReactNode
  fallback: (why: string, again: () => void) => ReactNode
}

export class ErrorBoundary extends Component<Props, { why: string | null }> {
  override state = { why: null }

  static getDerivedStateFromError(error: unknown): { why: string } {
    return { why: error instanceof Error ? error.message : String(error) }
  }

  override componentDidCatch(error: unknown): void {
    noteError(error)
  }

  again = (): void => this.setState({ why: null })

  override render(): ReactNode {
    return this.state.why === null ? this.props.children : this.props.fallback(this.state.why, this.again)
  }
}
