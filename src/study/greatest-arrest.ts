import type { LineResults, Results } from './results'

/**
 * The greatest force on one body in any fall onto a line, N: those beside a stanchion too, where the line gives nothing.
 * A line's own governing figure is of its falls in the middle of spans alone. Null where some of it is not known.
 */
export function greatestArrest({ findings }: Pick<Results, 'findings'>, line: LineResults): number | null {
  const crew = new Set(line.falls.map((f) => f.worker))
  const told = findings.filter((f) => f.rule === 'arrest-force' && crew.has(f.subject))
  const values = [line.governing.arrestForce, ...told.map((f) => f.value)]
  return values.some((v) => v === null) ? null : Math.max(...(values as number[]))
}
