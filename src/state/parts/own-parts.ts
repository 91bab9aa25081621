/** The person's own parts: kept on this machine, offered in every plan, copied into a plan when used. */
import { takeParts } from '../../plan/part-list/read'
import { writePartsJson } from '../../plan/part-list/write'
import type { Part } from '../../plan/types'
import { edit } from '../edit'
import { keepPart } from '../edits/propose-line'
import { recall, remember } from '../memory'
import { app } from '../store'

export function loadOwnParts(): void {
  const text = recall('parts')
  if (text) app.setState({ ownParts: takeParts(text).parts })
}

export function keepOwnParts(parts: readonly Part[]): void {
  const ids = new Set(parts.map((p) => p.id))
  const ownParts = [...app.getState().ownParts.filter((p) => !ids.has(p.id)), ...parts]
  app.setState({ ownParts })
  remember('parts', writePartsJson(ownParts))
}

export function dropOwnPart(id: string): void {
  const ownParts = app.getState().ownParts.filter((p) => p.id !== id)
  app.setState({ ownParts })
  remember('parts', writePartsJson(ownParts))
}

/** Puts a part into the plan; its id there, which differs where the plan has another part of that id. */
export function takePart(part: Part): string {
  const there = app.getState().plan.parts.find((p) => p.id === part.id)
  if (there) return there.id
  edit(`take ${part.name} into the plan`, (plan) => void keepPart(plan, part))
  return part.id
}

/** Changes a part that the plan uses: every line with it is computed again. */
export function changePart(part: Part): void {
  edit(`change ${part.name}`, (plan) => {
    const at = plan.parts.findIndex((p) => p.id === part.id)
    if (at >= 0) plan.parts[at] = part
    else plan.parts.push(part)
  })
}
