/** What the window does apart from editing the plan: select, hover, look, switch. */
import type { Vec3 } from '../plan/types'
import { hasRef, lineOfRef, type Ref, sameRef } from './refs'
import { app } from './store'
import type { CameraRequest, FindingKey, Ghost, Tool, UnitSystem, View } from './window-state'

/** Selects one thing, or with `add` puts it in or takes it out of what is selected; null selects nothing. */
export function select(ref: Ref | null, add = false): void {
  const { selection, plan, tapeLine } = app.getState()
  if (!ref) {
    app.setState({ selection: [] })
    return
  }
  const next = !add
    ? [ref]
    : hasRef(selection, ref)
      ? selection.filter((r) => !sameRef(r, ref))
      : [...selection, ref]
  app.setState({ selection: next, tapeLine: lineOfRef(plan, ref)?.id ?? tapeLine })
}

export function selectAll(refs: Ref[]): void {
  app.setState({ selection: refs })
}

export function hover(ref: Ref | null): void {
  if (!sameRef(app.getState().hover, ref)) app.setState({ hover: ref })
}

export const showView = (view: View): void => app.setState({ view, tool: { kind: 'select' }, ghost: null })

export const setTool = (tool: Tool): void => app.setState({ tool, ghost: null })

export const setGhost = (ghost: Ghost | null): void => app.setState({ ghost })

export const setUnits = (units: UnitSystem): void => app.setState({ units })

export const chooseFinding = (finding: FindingKey | null): void => app.setState({ finding })

export const hoverFinding = (finding: FindingKey | null): void => app.setState({ hoverFinding: finding })

/** Asks the scene's camera to go somewhere. */
export function look(to: CameraRequest['to']): void {
  app.setState({ camera: { n: app.getState().camera.n + 1, to } })
}

export const lookAtRef = (ref: Ref): void => look({ ref })
export const lookAtPoint = (point: Vec3): void => look({ point })
