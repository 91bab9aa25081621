/**
 * Draws something for every line, from that line and its girder alone: where neither has changed, nothing is made anew, so
 * that moving one of twelve lines costs what moving the only one does.
 */
import { type ComponentType, memo } from 'react'
import type { Girder, Line, Part } from '../../plan/types'
import { useApp } from '../../state/store'

export interface OnGirder {
  line: Line
  girder: Girder
  parts: readonly Part[]
}

/** A component that draws `Each` for every line whose girder there is. */
export function eachLine(Each: ComponentType<OnGirder>): ComponentType {
  const Kept = memo(Each)
  return function EachLine() {
    const lines = useApp((s) => s.plan.lines)
    const girders = useApp((s) => s.plan.girders)
    const parts = useApp((s) => s.plan.parts)
    return lines.map((line) => {
      const girder = girders.find((g) => g.id === line.girder)
      return girder && <Kept key={line.id} line={line} girder={girder} parts={parts} />
    })
  }
}
