import type { MouseEvent } from 'react'
import { app } from '../../state/store'

/** Opens the context menu where the pointer is; the thing under it was selected by the press. */
export function openMenuAt(e: MouseEvent): void {
  e.preventDefault()
  app.setState({ menu: { x: e.clientX, y: e.clientY } })
}
