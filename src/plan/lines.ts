import { findNodeAtLocation, parseTree } from 'jsonc-parser'
import type { Fault } from './fault'

/** Longer texts are not searched again for lines: their faults go by path alone. */
const MOST_TEXT = 3_000_000

/** The faults with the line of the text in which each value, or the nearest thing around it, stands. */
export function withLines(faults: Fault[], text: string): Fault[] {
  if (text.length > MOST_TEXT) return faults
  const tree = parseTree(text)
  if (!tree) return faults
  const starts = lineStarts(text)
  return faults.map((f) => {
    const steps = stepsOf(f.path)
    let node = findNodeAtLocation(tree, steps)
    while (!node && steps.pop() !== undefined) node = findNodeAtLocation(tree, steps)
    return node ? { ...f, line: lineAt(starts, node.offset) } : f
  })
}

/** The steps of a path written by `pathText`. */
function stepsOf(path: string): (string | number)[] {
  return [...path.matchAll(/\.([A-Za-z0-9_]+)|\[(\d+)\]|\[("(?:[^"\\]|\\.)*")\]/g)].map((m) =>
    m[1] !== undefined ? m[1] : m[2] !== undefined ? Number(m[2]) : String(JSON.parse(m[3]!)),
  )
}

function lineStarts(text: string): number[] {
  const starts = [0]
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1)
  return starts
}

/** Line number, from 1, of an offset. */
function lineAt(starts: number[], offset: number): number {
  let low = 0
  let high = starts.length
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (starts[middle]! <= offset) low = middle
    else high = middle
  }
  return low + 1
}
