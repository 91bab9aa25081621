import type { Tool } from '../window-state'

/** What the tool in hand wants next; empty while selecting. */
export function toolWords(tool: Tool): string {
  switch (tool.kind) {
    case 'select':
      return ''
    case 'draw-girder':
      return tool.points.length === 0
        ? 'Click where the girder starts. Esc lets go.'
        : 'Click where it ends; Shift keeps right angles. Or type the length on the left afterwards.'
    case 'draw-deck':
      return tool.points.length < 3
        ? 'Click the corners of the deck one after another.'
        : 'Click further corners; Enter or a double-click closes the deck.'
    case 'draw-lane':
      return tool.points.length < 2
        ? 'Click along the middle of the lane.'
        : 'Click further points; Enter or a double-click ends the lane.'
    case 'draw-line':
      return tool.from === null
        ? 'Click on a girder where the line starts. Esc lets go.'
        : 'Click on the same girder where the line ends.'
  }
}
